const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1
  return rest
})

/** CRC-32 as zip files use it (ISO 3309, ITU-T V.42: reflected, polynomial 0x04C11DB7). fflate does not check it. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) crc = (TABLE[(crc ^ byte) & 0xff] as number) ^ (crc >>> 8)
  return (crc ^ 0xffffffff) >>> 0
}
