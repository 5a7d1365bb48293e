/* The hold's own frame. */
#include "frame.h"

ox_frame ox_frame_make(double course_true_deg, int sense) {
  ox_frame f;
  f.course_true_deg = course_true_deg;
  f.sense = sense;
  f.along = ox_unit(course_true_deg);
  f.right = (ox_vec){f.along.y, -f.along.x};
  return f;
}

ox_vec ox_frame_in(const ox_frame *f, ox_vec true_north) {
  double right = ox_vec_dot(true_north, f->right);
  return (ox_vec){f->sense * right + 0.0, ox_vec_dot(true_north, f->along) + 0.0};
}

ox_vec ox_frame_out(const ox_frame *f, ox_vec own) {
  double right = f->sense * own.x;
  return (ox_vec){f->right.x * right + f->along.x * own.y + 0.0,
                  f->right.y * right + f->along.y * own.y + 0.0};
}

double ox_frame_heading_in(const ox_frame *f, double true_deg) {
  return ox_norm180_deg(f->sense * ox_norm180_deg(true_deg - f->course_true_deg));
}

double ox_frame_heading_out(const ox_frame *f, double own_deg) {
  return ox_norm360_deg(f->course_true_deg + f->sense * own_deg);
}
