import { s } from 'hastscript';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import type { Band, Hold } from '../hold.js';
import type { CycleRecord } from './cycle-record.js';

type Shape = ReturnType<typeof s>;

const width = 760;
const height = 400;
const plot = { left: 62, right: 698, top: 58, bottom: 344 };
/** One for each channel of temperature; more of them start again. */
const dashes = ['', '8 4', '2 3', '10 3 2 3'];

/**
 * Draws a record as a picture of one's own: temperatures over time, pressure on an axis to the right, the band in grey and the
 * hold marked with its length. Black on white, for print; the same record gives the same bytes.
 */
export function drawChart(record: CycleRecord, title: string, band?: Band, hold?: Hold): string {
  const axes = axesOf(record, band);
  const lines = linesOf(record, axes);
  const tree = s(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      ariaLabelledBy: 'title desc',
    },
    [
      s('title', { id: 'title' }, title),
      s('desc', { id: 'desc' }, describe(record, band, hold)),
      s('rect', { width, height, fill: '#fff' }),
      s('g', { fontFamily: 'Helvetica, Arial, sans-serif', fontSize: 12, fill: '#000' }, [
        label(plot.left, 20, title, { fontSize: 14, fontWeight: 'bold' }),
        ...drawBand(axes, band),
        ...drawGrid(axes),
        ...lines.map(({ points, dash, thickness }) => drawLine(points, dash, thickness)),
        ...drawHold(record, axes, hold),
        ...drawLegend(lines),
      ]),
    ],
  );
  return `${unified()
    .use(rehypeStringify, { space: 'svg', closeEmptyElements: true })
    .stringify({ type: 'root', children: [tree] })}\n`;
}

interface Axis {
  from: number;
  to: number;
  step: number;
  name: string;
}

interface Axes {
  time: Axis;
  temperature: Axis;
  pressure?: Axis;
}

interface Line {
  name: string;
  points: [x: number, y: number][];
  dash: string;
  thickness: number;
}

function axesOf({ seconds, temperatures, pressure }: CycleRecord, band: Band | undefined): Axes {
  const celsius = [...temperatures.flatMap((each) => each.celsius), ...(band === undefined ? [] : [band.from, band.to])];
  const minutes = (seconds.at(-1) ?? 0) / 60;
  const against = pressure?.against === 'air' ? 'gauge' : 'absolute';
  return {
    time: axis(0, minutes, 'minutes', 8, true),
    temperature: axis(Math.min(...celsius), Math.max(...celsius), '°C', 6),
    ...(pressure && {
      pressure: axis(Math.min(0, ...pressure.kilopascals), Math.max(...pressure.kilopascals), `kPa ${against}`, 6),
    }),
  };
}

/** An axis over a range, with about so many steps of 1, 2 or 5 times a power of ten; open-ended where it ends with the data. */
function axis(least: number, most: number, name: string, steps: number, open = false): Axis {
  const range = most > least ? most - least : 1;
  const power = 10 ** Math.floor(Math.log10(range / steps));
  const step = ([1, 2, 5, 10].find((each) => each * power * steps >= range) ?? 10) * power;
  const from = Math.floor(least / step + 1e-9) * step;
  const to = open ? most : Math.ceil(most / step - 1e-9) * step;
  return { from, to: to > from ? to : from + step, step, name };
}

function linesOf({ seconds, temperatures, pressure }: CycleRecord, axes: Axes): Line[] {
  const { pressure: right } = axes;
  const lines = temperatures.map(({ name, celsius }, index): Line => {
    const points = celsius.map((each, at): [number, number] => [xOf(axes, seconds[at] ?? 0), yOf(axes.temperature, each)]);
    return { name, points, dash: dashes[index % dashes.length] ?? '', thickness: 1.5 };
  });
  if (pressure === undefined || right === undefined) return lines;
  const points = pressure.kilopascals.map((each, at): [number, number] => [xOf(axes, seconds[at] ?? 0), yOf(right, each)]);
  return [...lines, { name: `${pressure.name}, right axis`, points, dash: '', thickness: 0.6 }];
}

function drawBand(axes: Axes, band: Band | undefined): Shape[] {
  if (band === undefined) return [];
  const top = yOf(axes.temperature, band.to);
  const bottom = yOf(axes.temperature, band.from);
  return [
    s('rect', { x: plot.left, y: round(top), width: plot.right - plot.left, height: round(bottom - top), fill: '#ddd' }),
    label(plot.left + 6, bottom + 13, `${plain(band.from)} to ${plain(band.to)} °C`, { fontSize: 11 }),
  ];
}

function drawGrid(axes: Axes): Shape[] {
  const { time, temperature, pressure } = axes;
  const left = ticksOf(temperature).flatMap((value) => [
    rule(plot.left, yOf(temperature, value), plot.right, yOf(temperature, value), '#bbb'),
    label(plot.left - 8, yOf(temperature, value) + 4, plain(value), { textAnchor: 'end' }),
  ]);
  const right = (pressure === undefined ? [] : ticksOf(pressure)).flatMap((value) => {
    const y = yOf(pressure ?? temperature, value);
    return [rule(plot.right, y, plot.right + 5, y, '#000'), label(plot.right + 9, y + 4, plain(value))];
  });
  const below = ticksOf(time).flatMap((value) => {
    const x = xOf(axes, value * 60);
    return [rule(x, plot.bottom, x, plot.bottom + 5, '#000'), label(x, plot.bottom + 19, plain(value), { textAnchor: 'middle' })];
  });
  return [
    ...left,
    ...right,
    ...below,
    rule(plot.left, plot.bottom, plot.right, plot.bottom, '#000'),
    rule(plot.left, plot.top, plot.left, plot.bottom, '#000'),
    ...(pressure === undefined ? [] : [rule(plot.right, plot.top, plot.right, plot.bottom, '#000')]),
    label(plot.left - 8, plot.top - 10, temperature.name, { textAnchor: 'end' }),
    label(plot.right + 52, plot.bottom + 19, time.name, { textAnchor: 'end' }),
    ...(pressure === undefined ? [] : [label(plot.right + 52, plot.top - 10, pressure.name, { textAnchor: 'end' })]),
  ];
}

function drawHold({ seconds }: CycleRecord, axes: Axes, hold: Hold | undefined): Shape[] {
  if (hold === undefined) return [];
  const [start, end] = [xOf(axes, seconds[hold.first] ?? 0), xOf(axes, seconds[hold.last] ?? 0)];
  const y = plot.top - 8;
  return [
    s('path', {
      d: `M${round(start)} ${plot.bottom}V${y - 4}M${round(end)} ${plot.bottom}V${y - 4}M${round(start)} ${y}H${round(end)}`,
      fill: 'none',
      stroke: '#000',
      strokeWidth: 0.8,
      strokeDasharray: 'none',
    }),
    label((start + end) / 2, y - 8, `hold ${sayLength(hold.seconds)}`, { textAnchor: 'middle', fontWeight: 'bold' }),
  ];
}

/** Names with a piece of their line, below the time. */
function drawLegend(lines: readonly Line[]): Shape[] {
  const y = height - 12;
  let x = plot.left;
  return lines.flatMap(({ name, dash, thickness }) => {
    const start = x;
    x += 46 + name.length * 6.4;
    return [
      drawLine(
        [
          [start, y - 4],
          [start + 26, y - 4],
        ],
        dash,
        thickness,
      ),
      label(start + 32, y, name),
    ];
  });
}

function drawLine(points: readonly [number, number][], dash: string, thickness: number): Shape {
  const d = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
  return s('path', {
    d,
    fill: 'none',
    stroke: '#000',
    strokeWidth: thickness,
    strokeLinejoin: 'round',
    ...(dash !== '' && { strokeDasharray: dash }),
  });
}

function rule(x1: number, y1: number, x2: number, y2: number, stroke: string): Shape {
  return s('path', { d: `M${round(x1)} ${round(y1)}L${round(x2)} ${round(y2)}`, stroke, strokeWidth: 0.6 });
}

function label(x: number, y: number, text: string, more: Record<string, string | number> = {}): Shape {
  return s('text', { x: round(x), y: round(y), ...more }, text);
}

function describe({ temperatures, pressure, seconds }: CycleRecord, band: Band | undefined, hold: Hold | undefined): string {
  const names = [...temperatures.map(({ name }) => name), ...(pressure === undefined ? [] : [pressure.name])].join(', ');
  const highest = plain(Math.max(...temperatures.flatMap(({ celsius }) => celsius)));
  const held =
    band === undefined
      ? ''
      : hold === undefined
        ? ` At no moment are all temperatures between ${plain(band.from)} and ${plain(band.to)} °C.`
        : ` All temperatures stay between ${plain(band.from)} and ${plain(band.to)} °C for ${sayLength(hold.seconds)}.`;
  return `${names} over ${sayLength(seconds.at(-1) ?? 0)}. The highest temperature is ${highest} °C.${held}`;
}

/** `3 min 30 s`. */
export function sayLength(seconds: number): string {
  const whole = Math.floor(seconds + 1e-9);
  const parts = [
    [Math.floor(whole / 3600), 'h'],
    [Math.floor(whole / 60) % 60, 'min'],
    [whole % 60, 's'],
  ].filter(([value]) => value !== 0);
  return parts.length === 0 ? '0 s' : parts.map((part) => part.join(' ')).join(' ');
}

function ticksOf({ from, to, step }: Axis): number[] {
  return Array.from({ length: Math.floor((to - from) / step + 1e-9) + 1 }, (_, index) => from + index * step);
}

function xOf({ time }: Axes, seconds: number): number {
  return plot.left + ((seconds / 60 - time.from) / (time.to - time.from)) * (plot.right - plot.left);
}

function yOf({ from, to }: Axis, value: number): number {
  return plot.bottom - ((value - from) / (to - from)) * (plot.bottom - plot.top);
}

function round(value: number): number {
  return Number(value.toFixed(2));
}

function plain(value: number): string {
  return String(Number(value.toFixed(3)));
}
