import { crc32, deflateSync } from 'node:zlib';

/**
 * A page as a small PNG of 16 shades of grey.
 *
 * @param pgm a picture as `pdftoppm -gray` makes it: `P5`, width, height, 255, then a byte a pixel.
 * @throws RangeError when it is not.
 */
export function greyPng(pgm: Buffer): Buffer {
  const head = /^P5\s(\d+)\s(\d+)\s255\s/.exec(pgm.toString('latin1', 0, 40));
  if (head === null) throw new RangeError('not a grey picture');
  const [width, height] = [Number(head[1]), Number(head[2])];
  const row = Math.ceil(width / 2);
  const packed = Buffer.alloc(height * (row + 1));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const shade = Math.round((pgm[head[0].length + y * width + x] ?? 255) / 17);
      const at = y * (row + 1) + 1 + (x >> 1);
      packed[at] = (packed[at] ?? 0) | (x % 2 === 0 ? shade << 4 : shade);
    }
  const size = Buffer.alloc(13);
  size.writeUInt32BE(width, 0);
  size.writeUInt32BE(height, 4);
  size.set([4, 0, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const chunks = [chunk('IHDR', size), chunk('IDAT', deflateSync(packed, { level: 9 })), chunk('IEND', Buffer.alloc(0))];
  return Buffer.concat([signature, ...chunks]);
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}
