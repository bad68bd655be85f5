/** Figures of a scale that say something. */
const FIGURES = 2;

/** `1:12` from paper mm for each real mm; `5:1` where things are drawn larger than they are. */
export function scaleText(scale: number): string {
  const plain = (value: number): string => String(Number(value.toPrecision(FIGURES)));
  return scale <= 1 ? `1:${plain(1 / scale)}` : `${plain(scale)}:1`;
}
