import { Canvas, drawingWidth, leading, type Point, smallType } from '../svg/canvas.js';
import { widthOf, wrapText } from '../svg/measure-text.js';
import { groupStations, type PathDrawing, type Station } from './model-path.js';

const small = { size: smallType };
const machineType = { size: 8.5 };
const zoneType = { size: 9.5, bold: true };
const roomType = { size: 10.5, bold: true };
const borderType = { size: 9, bold: true };

/** Between two stations of a room, between two rooms, and inside a room's walls. */
const step = 18;
const walk = 24;
const inside = 7;
/** Between the drawing and its edge, so that no line is cut. */
const edge = 1;
/** Stations beside each other, and treatment rooms beside each other, at most. */
const mostInRow = 4;
const mostTreatmentInRow = 5;
/** From the treatment rooms down to the stations, and from one row of stations to the next. */
const way = 44;
const betweenRows = 30;

interface Cell {
  station: Station;
  x: number;
  y: number;
  width: number;
  height: number;
}

interface Row {
  cells: Cell[];
  top: number;
  end: number;
}

/** Draws the way as a round: down to the dirty side, along the stations, and back up to where patients are treated. */
export function drawPath({ treatment, stations, beside, elsewhere, words }: PathDrawing): string {
  const canvas = new Canvas();
  const start = treatment.rooms.length > 0 ? drawTreatment(canvas, treatment) + way : 18;
  const perRow = Math.ceil(stations.length / Math.ceil(stations.length / mostInRow));
  const rows: Row[] = [];
  for (let first = 0; first < stations.length; first += perRow) {
    const top = (rows.at(-1)?.end ?? start - betweenRows) + betweenRows;
    const room = stations.length > perRow ? drawingWidth - 14 : drawingWidth;
    rows.push(drawRow(canvas, stations.slice(first, first + perRow), top, room - 2 * edge, beside));
  }
  drawSteps(canvas, rows);
  if (treatment.rooms.length > 0) drawRound(canvas, rows, start - way, words);
  drawBorder(canvas, rows, words);
  let end = rows.at(-1)?.end ?? start;
  for (const { room, machines } of elsewhere)
    end = canvas.lines(wrapText(`${room}: ${machines.join(', ')}`, drawingWidth, small), 0, end + 6, small);
  return canvas.svg(end + edge);
}

/** Returns where the treatment rooms end. */
function drawTreatment(canvas: Canvas, { about, rooms }: PathDrawing['treatment']): number {
  const perRow = Math.ceil(rooms.length / Math.ceil(rooms.length / mostTreatmentInRow));
  const gap = 8;
  const middle = drawingWidth / 2;
  let y = canvas.lines(wrapText(about, drawingWidth, small), middle, 0, { ...small, italic: true, anchor: 'middle' }) + 4;
  for (let first = 0; first < rooms.length; first += perRow) {
    const inRow = Math.min(perRow, rooms.length - first);
    const width = (drawingWidth - 2 * edge - gap * (inRow - 1)) / inRow;
    const row = rooms.slice(first, first + perRow).map(({ name, machines }) => ({
      name: wrapText(name, width - 2 * inside, roomType),
      machines: wrapText(machines.join(', '), width - 2 * inside, machineType),
    }));
    const tall = ({ name, machines }: (typeof row)[number]) =>
      name.length * leading(roomType.size) + machines.length * leading(machineType.size);
    const height = Math.max(...row.map(tall)) + 11;
    row.forEach((each, index) => {
      const x = edge + index * (width + gap);
      canvas.box(x, y, width, height, { width: 1 });
      const next = canvas.lines(each.name, x + width / 2, y + (height - tall(each)) / 2, { ...roomType, anchor: 'middle' });
      canvas.lines(each.machines, x + width / 2, next, { ...machineType, anchor: 'middle' });
    });
    y += height + gap;
  }
  return y - gap;
}

/** Stations side by side, each room's within its walls, the room's name at their foot. */
function drawRow(canvas: Canvas, stations: readonly Station[], top: number, room: number, beside: PathDrawing['beside']): Row {
  const groups = groupStations(stations);
  const gaps = (groups.length - 1) * walk + groups.length * 2 * inside + (stations.length - groups.length) * step;
  const width = (room - gaps) / stations.length;
  const height = Math.max(...stations.map((each) => heightOfStation(each, width)));
  const walls = groups.map(({ room: { id, name }, stations: own }) => {
    const wide = own.length * (width + step) - step;
    const machines = beside.filter(({ roomId }) => roomId === id).flatMap((each) => each.machines);
    return { wide, own, name: wrapText(name, wide, roomType), machines: placeMachines(machines, wide) };
  });
  const foot = ({ name, machines }: (typeof walls)[number]) => name.length * leading(roomType.size) + heightOfRows(machines);
  const end = top + inside + height + Math.max(...walls.map(foot)) + 8;
  const cells: Cell[] = [];
  let x = edge;
  for (const { wide, own, name, machines } of walls) {
    canvas.box(x, top, wide + 2 * inside, end - top, { width: 1 });
    own.forEach((station, index) => {
      const cell = { station, x: x + inside + index * (width + step), y: top + inside, width, height };
      drawStation(canvas, cell);
      cells.push(cell);
    });
    const named = canvas.lines(name, x + inside, top + inside + height + 3, roomType);
    drawMachines(canvas, machines, x + inside, named + 3);
    x += wide + 2 * inside + walk;
  }
  return { cells, top, end };
}

function heightOfStation({ zone, about, machines }: Station, width: number): number {
  const [zoneLines, aboutLines] = [wrapText(zone, width - 10, zoneType), wrapText(about, width - 10, small)];
  const text = zoneLines.length * leading(zoneType.size) + aboutLines.length * leading(small.size);
  return text + machines.reduce((sum, each) => sum + heightOfMachine(each, width - 10) + 4, 0) + 12;
}

function drawStation(canvas: Canvas, { station: { zone, about, machines }, x, y, width, height }: Cell): void {
  canvas.box(x, y, width, height, {}, 3);
  const text = width - 10;
  const named = canvas.lines(wrapText(zone, text, zoneType), x + 5, y + 4, zoneType) + 1;
  let at = canvas.lines(wrapText(about, text, small), x + 5, named, small) + 5;
  for (const machine of machines) {
    drawMachine(canvas, machine, x + 5, at, text);
    at += heightOfMachine(machine, text) + 4;
  }
}

function heightOfMachine(name: string, width: number): number {
  return wrapText(name, width - 8, machineType).length * leading(machineType.size) + 5;
}

function drawMachine(canvas: Canvas, name: string, x: number, y: number, width: number): void {
  canvas.box(x, y, width, heightOfMachine(name, width), { width: 0.6 });
  canvas.lines(wrapText(name, width - 8, machineType), x + width / 2, y + 2.2, { ...machineType, anchor: 'middle' });
}

interface PlacedMachine {
  name: string;
  x: number;
  y: number;
  width: number;
}

/** Machines side by side as far as there is room, then below. */
function placeMachines(machines: readonly string[], room: number): PlacedMachine[] {
  const placed: PlacedMachine[] = [];
  let [x, y, tall] = [0, 0, 0];
  for (const name of machines) {
    const width = Math.min(room, widthOf(name, machineType) + 14);
    if (x > 0 && x + width > room) {
      x = 0;
      y += tall + 4;
      tall = 0;
    }
    placed.push({ name, x, y, width });
    tall = Math.max(tall, heightOfMachine(name, width));
    x += width + 5;
  }
  return placed;
}

function heightOfRows(machines: readonly PlacedMachine[]): number {
  return machines.length === 0 ? 0 : Math.max(...machines.map(({ name, y, width }) => y + heightOfMachine(name, width))) + 4;
}

function drawMachines(canvas: Canvas, machines: readonly PlacedMachine[], x: number, y: number): void {
  for (const each of machines) drawMachine(canvas, each.name, x + each.x, y + each.y, each.width);
}

/** The arrows from station to station. */
function drawSteps(canvas: Canvas, rows: readonly Row[]): void {
  rows.forEach(({ cells, end }, index) => {
    cells.forEach((here, place) => {
      const next = cells[place + 1];
      const y = here.y + Math.min(here.height / 2, 34);
      if (next !== undefined) canvas.arrow([at(here.x + here.width, y), at(next.x, y)], { width: 1.5 });
    });
    const [last, first] = [cells.at(-1), rows[index + 1]?.cells[0]];
    if (last === undefined || first === undefined) return;
    const [right, y] = [last.x + last.width + inside, last.y + last.height / 2];
    const turn = end + betweenRows / 2;
    const down = [at(last.x + last.width, y), at(right + 5, y), at(right + 5, turn), at(middleOf(first), turn)];
    canvas.arrow([...down, at(middleOf(first), first.y)], { width: 1.5 });
  });
}

/** The arrows from the treatment rooms and back to them. */
function drawRound(canvas: Canvas, rows: readonly Row[], treatmentEnd: number, words: PathDrawing['words']): void {
  const [first, last] = [rows[0]?.cells[0], rows.at(-1)?.cells.at(-1)];
  if (first === undefined || last === undefined) return;
  const label = treatmentEnd + way / 2 - 14;
  const down = middleOf(first);
  canvas.arrow([at(down, treatmentEnd), at(down, first.y)], { width: 1.5 });
  canvas.lines(wrapText(words.used, 150, small), down + 7, label, small);
  const up = rows.length > 1 ? drawingWidth - 3 : middleOf(last);
  const y = last.y + last.height / 2;
  const back = rows.length > 1 ? [at(last.x + last.width, y), at(up, y)] : [at(up, last.y)];
  canvas.arrow([...back, at(up, treatmentEnd)], { width: 1.5 });
  canvas.lines(wrapText(words.sterile, 150, small), up - 7, label, { ...small, anchor: 'end' });
}

/** The heavy line between the last station for used instruments and the first for clean ones, with its two words. */
function drawBorder(canvas: Canvas, rows: readonly Row[], words: PathDrawing['words']): void {
  const isDirty = ({ station }: Cell | { station: Station }) => station.isDirty;
  rows.forEach(({ cells, top, end }, index) => {
    const place = cells.findIndex((each) => !isDirty(each));
    const [before, after] = [cells[place - 1], cells[place]];
    if (before !== undefined && after !== undefined) {
      const x = (before.x + before.width + after.x) / 2;
      const isWithinRoom = before.station.room.id === after.station.room.id;
      canvas.line([at(x, top - 14), at(x, isWithinRoom ? before.y + before.height + 3 : end)], { width: 3 });
      canvas.text(words.dirty, x - 6, top - 5, { ...borderType, anchor: 'end' });
      canvas.text(words.clean, x + 6, top - 5, borderType);
    }
    const next = rows[index + 1];
    if (next === undefined || place !== -1 || next.cells.some(isDirty)) return;
    const y = end + betweenRows / 2 - 6;
    canvas.line([at(edge, y), at(drawingWidth - 18, y)], { width: 3 });
    canvas.text(words.dirty, drawingWidth / 2, y - 4, { ...borderType, anchor: 'middle' });
    canvas.text(words.clean, drawingWidth / 2, y + 16, { ...borderType, anchor: 'middle' });
  });
}

function at(x: number, y: number): Point {
  return { x, y };
}

function middleOf({ x, width }: Cell): number {
  return x + width / 2;
}
