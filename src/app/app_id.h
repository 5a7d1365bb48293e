/* The application's name and addresses: here and nowhere else in the code. */
#ifndef APP_ID_H
#define APP_ID_H

#define OX_APP_ID "io.github.oxbow_plotter.Oxbow"
#define OX_APP_NAME "Oxbow"
#define OX_RESOURCES "/io/github/oxbow_plotter/Oxbow"

#endif
