/* The lesson that a first start shows. */
#ifndef OX_DEMO_H
#define OX_DEMO_H

#include "oxbow/lesson.h"

/* A copy of the demo lesson that comes with the program; a new lesson should that not read. Never
 * NULL. The caller frees it with ox_lesson_free. */
ox_lesson *ox_demo_lesson(void);

#endif
