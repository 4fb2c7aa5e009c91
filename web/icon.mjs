// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Draws assets/icon.svg into PNG files, so that there is one drawing and no picture to be forgotten when it changes. It
// knows circles and polygons with a fill, and refuses a drawing that has anything else.
import { deflateSync } from 'node:zlib';

const kSide = 512;  // of the drawing, from its viewBox
const kSamples = 4;  // along each side of a pixel

const number = (attributes, name) => {
  const value = Number(attributes[name]);
  if (!Number.isFinite(value)) throw new Error(`icon: ${name}="${attributes[name]}" is not a number`);
  return value;
};

function circle(attributes) {
  const [x, y, r] = ['cx', 'cy', 'r'].map((name) => number(attributes, name));
  return { top: y - r, bottom: y + r, holds: (px, py) => (px - x) ** 2 + (py - y) ** 2 <= r * r };
}

function polygon(attributes) {
  const corners = attributes.points.trim().split(/\s+/).map((pair) => pair.split(',').map(Number));
  if (!corners.flat().every(Number.isFinite)) throw new Error(`icon: points="${attributes.points}" are not numbers`);
  const heights = corners.map(([, y]) => y);
  const holds = (px, py) => corners.reduce((inside, [x, y], i) => {
    const [lastX, lastY] = corners.at(i - 1);
    return (y > py) !== (lastY > py) && px < x + (py - y) / (lastY - y) * (lastX - x) ? !inside : inside;
  }, false);
  return { top: Math.min(...heights), bottom: Math.max(...heights), holds };
}

const kKinds = { circle, polygon };

/** The shapes of a drawing, the uppermost first. */
function shapesOf(svg) {
  if (!svg.includes(`viewBox="0 0 ${kSide} ${kSide}"`)) throw new Error(`icon: it is to be ${kSide} by ${kSide}`);
  return [...svg.replace(/<!--[^]*?-->/g, '').matchAll(/<([a-z]+)([^>]*?)\/?>/g)].slice(1).map(([, kind, text]) => {
    const attributes = Object.fromEntries([...text.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, name, value]) => [name, value]));
    if (!(kind in kKinds)) throw new Error(`icon: <${kind}> is not known here`);
    return { ...kKinds[kind](attributes), colour: colourOf(attributes.fill) };
  }).reverse();
}

function colourOf(fill) {
  if (!/^#[0-9a-f]{6}$/.test(fill)) throw new Error(`icon: fill="${fill}" is not written as #rrggbb`);
  return [1, 3, 5].map((at) => parseInt(fill.slice(at, at + 2), 16));
}

/** One pixel, [red, green, blue, alpha]: the mean of what its samples meet. */
function pixel(shapes, ground, left, top, step) {
  const sum = [0, 0, 0];
  let met = 0;
  for (let i = 0; i < kSamples * kSamples; ++i) {
    const x = left + (i % kSamples + 0.5) * step / kSamples, y = top + (Math.floor(i / kSamples) + 0.5) * step / kSamples;
    const colour = shapes.find((shape) => shape.holds(x, y))?.colour ?? ground;
    if (!colour) continue;
    met += 1;
    colour.forEach((part, c) => { sum[c] += part; });
  }
  return [...sum.map((part) => (met ? Math.round(part / met) : 0)), Math.round(255 * met / kSamples ** 2)];
}

function checksum(bytes) {
  let sum = ~0;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; ++bit) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return ~sum >>> 0;
}

/** A block of a PNG file (ISO/IEC 15948, 5.3). */
function block(name, data) {
  const whole = Buffer.alloc(data.length + 12);
  whole.writeUInt32BE(data.length, 0);
  whole.write(name, 4, 'latin1');
  data.copy(whole, 8);
  whole.writeUInt32BE(checksum(whole.subarray(4, -4)), data.length + 8);
  return whole;
}

function fileOf(size, colours, rows) {
  if (colours.length > 256) throw new Error(`icon: ${colours.length} colours are more than a byte tells apart`);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 3, 0, 0, 0], 8);  // a byte for each pixel, which is its place in the list of colours
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), block('IHDR', head),
    block('PLTE', Buffer.from(colours.flatMap((colour) => colour.slice(0, 3)))),
    block('tRNS', Buffer.from(colours.map((colour) => colour[3]))),
    block('IDAT', deflateSync(rows, { level: 9 })), block('IEND', Buffer.alloc(0))]);
}

/**
 * The drawing as a PNG file of size by size pixels. With a ground (#rrggbb) it covers its whole square, and the drawing is
 * made smaller by `share`, so that a device may cut the square to a circle.
 */
export function pngOf(svg, size, { ground, share = 1 } = {}) {
  const shapes = shapesOf(svg);
  const behind = ground && colourOf(ground);
  const step = kSide / size / share, start = kSide / 2 * (1 - 1 / share);
  const colours = new Map();
  const rows = Buffer.alloc(size * (1 + size));  // each row begins with its filter: none
  for (let row = 0; row < size; ++row) {
    const top = start + row * step;
    const near = shapes.filter((shape) => shape.bottom >= top && shape.top <= top + step);
    for (let column = 0; column < size; ++column) {
      const colour = pixel(near, behind, start + column * step, top, step).join();
      if (!colours.has(colour)) colours.set(colour, colours.size);
      rows[row * (1 + size) + 1 + column] = colours.get(colour);
    }
  }
  return fileOf(size, [...colours.keys()].map((colour) => colour.split(',').map(Number)), rows);
}
