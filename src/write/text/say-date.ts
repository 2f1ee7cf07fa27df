const months = 'January February March April May June July August September October November December'.split(' ');

/** `2026-12-01` as `December 1, 2026`. */
export function sayDate(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `${months[(month ?? 1) - 1]} ${day}, ${year}`;
}
