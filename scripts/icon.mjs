/**
 * Draws extension/icon.png: the end of a piece of timber, a scant less on each side than the size it is called by, whose
 * corners are marked around it. Run it after a change; the picture is committed.
 */
import { writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";

const SIZE = 256;
/** Each pixel is the mean of so many by so many samples. */
const SAMPLES = 4;

const ground = [35, 48, 58];
const early = [226, 190, 138];
const late = [176, 124, 72];
const bark = [120, 80, 44];
const chalk = [238, 236, 228];

const pixels = new Uint8Array(SIZE * SIZE * 4);
for (let y = 0; y < SIZE; y += 1) {
  for (let x = 0; x < SIZE; x += 1) pixels.set(pixelAt(x, y), (y * SIZE + x) * 4);
}
await writeFile(fileURLToPath(new URL("../extension/icon.png", import.meta.url)), png(pixels, SIZE, SIZE));

function pixelAt(x, y) {
  const sum = [0, 0, 0, 0];
  for (let j = 0; j < SAMPLES; j += 1) {
    for (let i = 0; i < SAMPLES; i += 1) {
      const [r, g, b, a] = colourAt(x + (i + 0.5) / SAMPLES, y + (j + 0.5) / SAMPLES);
      for (const [index, value] of [r * a, g * a, b * a, a].entries()) sum[index] += value;
    }
  }
  const alpha = sum[3];
  const mean = sum.slice(0, 3).map((value) => (alpha === 0 ? 0 : Math.round(value / alpha)));
  return [...mean, Math.round((255 * alpha) / SAMPLES ** 2)];
}

/** Red, green, blue from 0 to 255 and how much of the place is covered, from 0 to 1. */
function colourAt(x, y) {
  if (!insideRounded(x, y, 0, SIZE, 44)) return [0, 0, 0, 0];
  if (isCornerMark(x, y)) return [...chalk, 1];
  if (insideRounded(x, y, 62, SIZE - 62, 5)) return [...woodAt(x, y), 1];
  return [...ground, 1];
}

function insideRounded(x, y, from, to, radius) {
  if (x < from || y < from || to < x || to < y) return false;
  const dx = Math.max(from + radius - x, x - (to - radius), 0);
  const dy = Math.max(from + radius - y, y - (to - radius), 0);
  return dx * dx + dy * dy <= radius * radius;
}

/** Four angles around the piece: the size it is called by. */
function isCornerMark(x, y) {
  const [from, to, long, thick] = [38, SIZE - 38, 36, 6];
  const near = (value) => (value < SIZE / 2 ? value - from : to - value);
  const [dx, dy] = [near(x), near(y)];
  if (dx < 0 || dy < 0) return false;
  return (dx <= thick && dy <= long) || (dy <= thick && dx <= long);
}

/** Rings about a pith that lies below the piece, to the left: each dark for a little, then light for longer. */
function woodAt(x, y) {
  const edge = Math.min(x - 62, y - 62, SIZE - 62 - x, SIZE - 62 - y);
  if (edge < 3) return bark;
  const [dx, dy] = [x - 96, y - 236];
  const wave = 2.2 * Math.sin(Math.atan2(dy, dx) * 7);
  const radius = Math.hypot(dx, dy * 0.94) + wave;
  const ring = (radius / 15) % 1;
  const dark = ring < 0.72 ? (ring / 0.72) ** 3 * 0.55 : 1 - (ring - 0.72) / 0.28 / 4;
  return early.map((value, index) => value + (late[index] - value) * dark);
}

/** The bytes of a PNG file of 8-bit RGBA pixels. */
function png(data, width, height) {
  const lines = Buffer.alloc(height * (1 + width * 4));
  for (let y = 0; y < height; y += 1)
    lines.set(data.subarray(y * width * 4, (y + 1) * width * 4), y * (1 + width * 4) + 1);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** The cyclic redundancy check of the PNG specification, annex D. */
function crc32(bytes) {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}
