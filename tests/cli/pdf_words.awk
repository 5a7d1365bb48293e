# Words of `pdftotext -bbox` that leave their page or lie on another: exit 1, and a line for each.
# Boxes are as tall as the font, not as the letters: lines may share a third of it.
/<page / {split($0, q, "\""); width = q[2]; height = q[4]; page++; n = 0}
/<word / {
  split($0, q, "\""); x0 = q[2]; y0 = q[4]; x1 = q[6]; y1 = q[8]
  word = $0; sub(/.*">/, "", word); sub(/<.*/, "", word); all++
  if (x0 < 0 || y0 < 0 || x1 > width || y1 > height) {print page ": " word " leaves the page"; bad++}
  for (i = 0; i < n; i++) {
    across = (x1 < X1[i] ? x1 : X1[i]) - (x0 > X0[i] ? x0 : X0[i])
    down = (y1 < Y1[i] ? y1 : Y1[i]) - (y0 > Y0[i] ? y0 : Y0[i])
    tall = y1 - y0 < Y1[i] - Y0[i] ? y1 - y0 : Y1[i] - Y0[i]
    if (across > 1 && down > tall / 3) {print page ": " word " lies on " T[i]; bad++}
  }
  X0[n] = x0; Y0[n] = y0; X1[n] = x1; Y1[n] = y1; T[n++] = word
}
END {if (all < 100) print "only " all + 0 " words"; exit bad > 0 || all < 100}
