/** Relative luminance of #rrggbb, 0 to 1. Source: WCAG 2.2, definition of relative luminance. */
export function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21. Source: WCAG 2.2, definition of contrast ratio. */
export function contrast(a: string, b: string): number {
  const [lower = 0, upper = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (upper + 0.05) / (lower + 0.05);
}
