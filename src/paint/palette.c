/* The palettes: screen light, screen dark, projector, print; and the screen in high contrast, light
 * and dark, where lines and text alike stand out seven to one.
 *
 * Okabe and Ito's hues: track blue, entry bluish green, comparison vermillion, wind sky blue on
 * dark and blue on light; the protected area and a second case in step reddish purple, a student's
 * guess orange darkened to be read, the band of a spread a pale sky blue.
 * No meaning hangs on a hue alone, for the lines differ by dash and width too. */
#include "palette.h"

#define RGB(hex)                                                                                 \
  {(double)((hex) >> 16 & 0xff) / 255.0, (double)((hex) >> 8 & 0xff) / 255.0,                    \
   (double)((hex)&0xff) / 255.0}

static const ox_palette palettes[OX_PALETTE_COUNT] = {
    [OX_PALETTE_LIGHT] =
        {.name = "light",
         .ink = {[OX_HUE_BOARD] = RGB(0xffffff), [OX_HUE_TINT] = RGB(0xfff9ee),
                 [OX_HUE_TEXT] = RGB(0x16191d), [OX_HUE_QUIET] = RGB(0x555b63),
                 [OX_HUE_COURSE] = RGB(0x16191d), [OX_HUE_STILL_AIR] = RGB(0x000000),
                 [OX_HUE_TRACK] = RGB(0x0072b2), [OX_HUE_TRACK_TEXT] = RGB(0x00639b),
                 [OX_HUE_ENTRY] = RGB(0x00946b), [OX_HUE_ENTRY_TEXT] = RGB(0x00704f),
                 [OX_HUE_WIND] = RGB(0x0072b2), [OX_HUE_ROSE] = RGB(0x868c94),
                 [OX_HUE_HATCH] = RGB(0xc9cdd3), [OX_HUE_DIRECT] = RGB(0xe3ebf5),
                 [OX_HUE_PARALLEL] = RGB(0xf3e3ee), [OX_HUE_TEARDROP] = RGB(0xdcf1e6),
                 [OX_HUE_AIRCRAFT] = RGB(0x16191d),
                 [OX_HUE_COMPARE] = RGB(0xd55e00), [OX_HUE_COMPARE_TEXT] = RGB(0xa84800),
                 [OX_HUE_OTHER] = RGB(0x9c3f7c), [OX_HUE_GUESS] = RGB(0x8f5400),
                 [OX_HUE_PEN_BLACK] = RGB(0x16191d), [OX_HUE_PEN_VERMILLION] = RGB(0xd55e00),
                 [OX_HUE_PEN_BLUE] = RGB(0x1f4fa3),
                 [OX_HUE_AREA] = RGB(0x944573), [OX_HUE_BAND] = RGB(0xcfe8f8)},
         .key_share = 0.0208, .label_share = 0.0185, .small_share = 0.0168,
         .title_share = 0.0235, .least_text = 10.0,
         .line_share = 0.0034, .least_line = 0.9, .fine_share = 0.0},
    [OX_PALETTE_DARK] =
        {.name = "dark",
         .ink = {[OX_HUE_BOARD] = RGB(0x1e1e1e), [OX_HUE_TINT] = RGB(0x292519),
                 [OX_HUE_TEXT] = RGB(0xf2f2f2), [OX_HUE_QUIET] = RGB(0xb4b9c0),
                 [OX_HUE_COURSE] = RGB(0xe6e6e6), [OX_HUE_STILL_AIR] = RGB(0xffffff),
                 [OX_HUE_TRACK] = RGB(0x3f9fe6), [OX_HUE_TRACK_TEXT] = RGB(0x6bb8f2),
                 [OX_HUE_ENTRY] = RGB(0x1fb88c), [OX_HUE_ENTRY_TEXT] = RGB(0x35cda0),
                 [OX_HUE_WIND] = RGB(0x56b4e9), [OX_HUE_ROSE] = RGB(0x7d838b),
                 [OX_HUE_HATCH] = RGB(0x42464b), [OX_HUE_DIRECT] = RGB(0x26323f),
                 [OX_HUE_PARALLEL] = RGB(0x3d2a38), [OX_HUE_TEARDROP] = RGB(0x1f3a30),
                 [OX_HUE_AIRCRAFT] = RGB(0xffffff),
                 [OX_HUE_COMPARE] = RGB(0xe8701a), [OX_HUE_COMPARE_TEXT] = RGB(0xf59a5c),
                 [OX_HUE_OTHER] = RGB(0xde9ac7), [OX_HUE_GUESS] = RGB(0xe69f00),
                 [OX_HUE_PEN_BLACK] = RGB(0xf2f2f2), [OX_HUE_PEN_VERMILLION] = RGB(0xf07a2a),
                 [OX_HUE_PEN_BLUE] = RGB(0x7fb2ff),
                 [OX_HUE_AREA] = RGB(0xcf8fb3), [OX_HUE_BAND] = RGB(0x233c4d)},
         .key_share = 0.0208, .label_share = 0.0185, .small_share = 0.0168,
         .title_share = 0.0235, .least_text = 10.0,
         .line_share = 0.0034, .least_line = 0.9, .fine_share = 0.0},
    [OX_PALETTE_PROJECTOR] =
        {.name = "projector",
         .ink = {[OX_HUE_BOARD] = RGB(0xffffff), [OX_HUE_TINT] = RGB(0xfff4dc),
                 [OX_HUE_TEXT] = RGB(0x000000), [OX_HUE_QUIET] = RGB(0x333333),
                 [OX_HUE_COURSE] = RGB(0x000000), [OX_HUE_STILL_AIR] = RGB(0x000000),
                 [OX_HUE_TRACK] = RGB(0x0060a8), [OX_HUE_TRACK_TEXT] = RGB(0x00508c),
                 [OX_HUE_ENTRY] = RGB(0x007a56), [OX_HUE_ENTRY_TEXT] = RGB(0x005f43),
                 [OX_HUE_WIND] = RGB(0x0060a8), [OX_HUE_ROSE] = RGB(0x6a6f75),
                 [OX_HUE_HATCH] = RGB(0xb4b8be), [OX_HUE_DIRECT] = RGB(0xd3e2f4),
                 [OX_HUE_PARALLEL] = RGB(0xf2d3e8), [OX_HUE_TEARDROP] = RGB(0xc5ecd9),
                 [OX_HUE_AIRCRAFT] = RGB(0x000000),
                 [OX_HUE_COMPARE] = RGB(0xc04f00), [OX_HUE_COMPARE_TEXT] = RGB(0x803200),
                 [OX_HUE_OTHER] = RGB(0x7d2f63), [OX_HUE_GUESS] = RGB(0x6e4000),
                 [OX_HUE_PEN_BLACK] = RGB(0x000000), [OX_HUE_PEN_VERMILLION] = RGB(0xc04f00),
                 [OX_HUE_PEN_BLUE] = RGB(0x0a3d91),
                 [OX_HUE_AREA] = RGB(0x77315a), [OX_HUE_BAND] = RGB(0xc9e6f7)},
         .key_share = 0.042, .label_share = 0.033, .small_share = 0.026,
         .title_share = 0.042, .least_text = 10.0,
         .line_share = 0.0062, .least_line = 1.2, .fine_share = 0.003},
    [OX_PALETTE_PRINT] =
        {.name = "print",
         .ink = {[OX_HUE_BOARD] = RGB(0xffffff), [OX_HUE_TINT] = RGB(0xfbf7ee),
                 [OX_HUE_TEXT] = RGB(0x000000), [OX_HUE_QUIET] = RGB(0x404040),
                 [OX_HUE_COURSE] = RGB(0x000000), [OX_HUE_STILL_AIR] = RGB(0x000000),
                 [OX_HUE_TRACK] = RGB(0x0068a3), [OX_HUE_TRACK_TEXT] = RGB(0x005a8c),
                 [OX_HUE_ENTRY] = RGB(0x00835e), [OX_HUE_ENTRY_TEXT] = RGB(0x00694b),
                 [OX_HUE_WIND] = RGB(0x0068a3), [OX_HUE_ROSE] = RGB(0x7c7c7c),
                 [OX_HUE_HATCH] = RGB(0xb8b8b8), [OX_HUE_DIRECT] = RGB(0xe6ecf4),
                 [OX_HUE_PARALLEL] = RGB(0xf2e4ee), [OX_HUE_TEARDROP] = RGB(0xdff0e8),
                 [OX_HUE_AIRCRAFT] = RGB(0x000000),
                 [OX_HUE_COMPARE] = RGB(0xca5800), [OX_HUE_COMPARE_TEXT] = RGB(0x9c4300),
                 [OX_HUE_OTHER] = RGB(0x8a3f70), [OX_HUE_GUESS] = RGB(0x8c5200),
                 [OX_HUE_PEN_BLACK] = RGB(0x000000), [OX_HUE_PEN_VERMILLION] = RGB(0xca5800),
                 [OX_HUE_PEN_BLUE] = RGB(0x1f4fa3),
                 [OX_HUE_AREA] = RGB(0x8a4a6e), [OX_HUE_BAND] = RGB(0xcde7f6)},
         .key_share = 0.0195, .label_share = 0.0165, .small_share = 0.0145,
         .title_share = 0.024, .least_text = 8.0,
         .line_share = 0.0034, .least_line = 0.6, .fine_share = 0.0},
    [OX_PALETTE_CONTRAST] =
        {.name = "contrast",
         .ink = {[OX_HUE_BOARD] = RGB(0xffffff), [OX_HUE_TINT] = RGB(0xfff6e0),
                 [OX_HUE_TEXT] = RGB(0x000000), [OX_HUE_QUIET] = RGB(0x1f1f1f),
                 [OX_HUE_COURSE] = RGB(0x000000), [OX_HUE_STILL_AIR] = RGB(0x000000),
                 [OX_HUE_TRACK] = RGB(0x004a85), [OX_HUE_TRACK_TEXT] = RGB(0x003f73),
                 [OX_HUE_ENTRY] = RGB(0x00553c), [OX_HUE_ENTRY_TEXT] = RGB(0x004d36),
                 [OX_HUE_WIND] = RGB(0x004a85), [OX_HUE_ROSE] = RGB(0x474747),
                 [OX_HUE_HATCH] = RGB(0x868686), [OX_HUE_DIRECT] = RGB(0xd3e2f4),
                 [OX_HUE_PARALLEL] = RGB(0xf2d3e8), [OX_HUE_TEARDROP] = RGB(0xc5ecd9),
                 [OX_HUE_AIRCRAFT] = RGB(0x000000),
                 [OX_HUE_COMPARE] = RGB(0x8a3300), [OX_HUE_COMPARE_TEXT] = RGB(0x752b00),
                 [OX_HUE_OTHER] = RGB(0x6b2553), [OX_HUE_GUESS] = RGB(0x5c3500),
                 [OX_HUE_PEN_BLACK] = RGB(0x000000), [OX_HUE_PEN_VERMILLION] = RGB(0x8a3300),
                 [OX_HUE_PEN_BLUE] = RGB(0x0a3d91),
                 [OX_HUE_AREA] = RGB(0x64254a), [OX_HUE_BAND] = RGB(0xd6ecf9)},
         .key_share = 0.0208, .label_share = 0.0185, .small_share = 0.0168,
         .title_share = 0.0235, .least_text = 10.0,
         .line_share = 0.0044, .least_line = 1.2, .fine_share = 0.0},
    [OX_PALETTE_CONTRAST_DARK] =
        {.name = "contrast-dark",
         .ink = {[OX_HUE_BOARD] = RGB(0x000000), [OX_HUE_TINT] = RGB(0x1c180c),
                 [OX_HUE_TEXT] = RGB(0xffffff), [OX_HUE_QUIET] = RGB(0xe4e4e4),
                 [OX_HUE_COURSE] = RGB(0xffffff), [OX_HUE_STILL_AIR] = RGB(0xffffff),
                 [OX_HUE_TRACK] = RGB(0x7cc4ff), [OX_HUE_TRACK_TEXT] = RGB(0x9dd3ff),
                 [OX_HUE_ENTRY] = RGB(0x3fe0b0), [OX_HUE_ENTRY_TEXT] = RGB(0x66e8c2),
                 [OX_HUE_WIND] = RGB(0x7cc4ff), [OX_HUE_ROSE] = RGB(0xb8b8b8),
                 [OX_HUE_HATCH] = RGB(0x6e6e6e), [OX_HUE_DIRECT] = RGB(0x1b2a3a),
                 [OX_HUE_PARALLEL] = RGB(0x36222f), [OX_HUE_TEARDROP] = RGB(0x163026),
                 [OX_HUE_AIRCRAFT] = RGB(0xffffff),
                 [OX_HUE_COMPARE] = RGB(0xffa866), [OX_HUE_COMPARE_TEXT] = RGB(0xffbb88),
                 [OX_HUE_OTHER] = RGB(0xf2bfdd), [OX_HUE_GUESS] = RGB(0xffc24d),
                 [OX_HUE_PEN_BLACK] = RGB(0xffffff), [OX_HUE_PEN_VERMILLION] = RGB(0xffa866),
                 [OX_HUE_PEN_BLUE] = RGB(0xa8ccff),
                 [OX_HUE_AREA] = RGB(0xe6b3d0), [OX_HUE_BAND] = RGB(0x17303f)},
         .key_share = 0.0208, .label_share = 0.0185, .small_share = 0.0168,
         .title_share = 0.0235, .least_text = 10.0,
         .line_share = 0.0044, .least_line = 1.2, .fine_share = 0.0},
};

const ox_palette *ox_palette_get(ox_palette_id id) {
  unsigned i = (unsigned)id;
  return &palettes[i < OX_PALETTE_COUNT ? i : OX_PALETTE_LIGHT];
}

const char *ox_palette_name(ox_palette_id id) {
  return ox_palette_get(id)->name;
}
