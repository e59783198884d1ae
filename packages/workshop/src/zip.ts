import { crc32, deflateRawSync } from 'node:zlib';

/**
 * Files packed into one ZIP archive (PKWARE APPNOTE 6.3: local headers, central directory, end record; deflate, UTF-8
 * names, no ZIP64). Throws above 4 GiB or 65,535 files, which such an archive cannot hold. Times are left at the
 * format's zero, 1 January 1980, so that the same files give the same bytes.
 */
export function zipOf(files: readonly { path: string; bytes: Uint8Array }[]): Uint8Array {
  if (files.length > 0xffff) throw new RangeError(`${files.length} files do not fit into one ZIP archive.`);
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const { path, bytes } of files) {
    const name = Buffer.from(path, 'utf8');
    const packed = deflateRawSync(bytes);
    const common = commonFields(name.length, bytes, packed);
    const local = Buffer.concat([signature(0x04034b50), common, name]);
    directory.push(
      Buffer.concat([signature(0x02014b50), number16(20), common, directoryFields(offset), name]),
    );
    parts.push(local, packed);
    offset += local.length + packed.length;
    if (offset > 0xffffffff) throw new RangeError('More than 4 GiB do not fit into one ZIP archive.');
  }
  const index = Buffer.concat(directory);
  const end = Buffer.concat([
    signature(0x06054b50),
    number16(0, 0, files.length, files.length),
    number32(index.length, offset),
    number16(0),
  ]);
  return Buffer.concat([...parts, index, end]);
}

const DEFLATED = 8;
const UTF8_NAMES = 0x0800;
const FIRST_DAY_OF_1980 = 0x21;

function commonFields(nameLength: number, bytes: Uint8Array, packed: Uint8Array): Uint8Array {
  return Buffer.concat([
    number16(20, UTF8_NAMES, DEFLATED, 0, FIRST_DAY_OF_1980),
    number32(crc32(bytes), packed.length, bytes.length),
    number16(nameLength, 0),
  ]);
}

/** Comment length, disk, internal and external attributes, offset of the local header. */
const directoryFields = (offset: number): Uint8Array =>
  Buffer.concat([number16(0, 0, 0), number32(0, offset)]);

const signature = (value: number): Uint8Array => number32(value);

function number16(...values: number[]): Uint8Array {
  const bytes = Buffer.alloc(values.length * 2);
  values.forEach((value, index) => {
    bytes.writeUInt16LE(value, index * 2);
  });
  return bytes;
}

function number32(...values: number[]): Uint8Array {
  const bytes = Buffer.alloc(values.length * 4);
  values.forEach((value, index) => {
    bytes.writeUInt32LE(value, index * 4);
  });
  return bytes;
}
