// SHA-256, as FIPS 180-4 (Secure Hash Standard, NIST, 2015) has it: the kernel runs in the page too, where node's own is not.

/** The SHA-256 of some bytes, as 64 hexadecimal digits. */
export const sha256 = (bytes: Uint8Array): string => {
  const words = padded(bytes);
  const state = Uint32Array.from(firstState);
  for (let at = 0; at < words.length; at += 16) mixIn(state, words.subarray(at, at + 16));
  return [...state].map((word) => word.toString(16).padStart(8, "0")).join("");
};

/** The message with a one bit, noughts and its length in bits behind it (section 5.1.1), in words of 32 bits. */
const padded = (bytes: Uint8Array): Uint32Array => {
  const words = new Uint32Array(16 * Math.ceil((bytes.length + 9) / 64));
  const put = (byte: number, at: number): void => {
    words[at >> 2] = words[at >> 2]! | (byte << (24 - 8 * (at % 4)));
  };
  bytes.forEach(put);
  put(0x80, bytes.length);
  words[words.length - 2] = Math.floor(bytes.length / 2 ** 29);
  words[words.length - 1] = bytes.length << 3;
  return words;
};

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/** One block of 16 words (section 6.2.2). */
const mixIn = (state: Uint32Array, block: Uint32Array): void => {
  const schedule = new Uint32Array(64);
  schedule.set(block);
  for (let t = 16; t < 64; t += 1) {
    const [early, late] = [schedule[t - 15]!, schedule[t - 2]!];
    const first = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const second = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    schedule[t] = schedule[t - 16]! + first + schedule[t - 7]! + second;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let t = 0; t < 64; t += 1) {
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const one = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + constants[t]! + schedule[t]!) | 0;
    const two = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + majority) | 0;
    [a, b, c, d, e, f, g, h] = [(one + two) | 0, a, b, c, (d + one) | 0, e, f, g];
  }
  [a, b, c, d, e, f, g, h].forEach((word, index) => {
    state[index] = state[index]! + word;
  });
};

// Section 5.3.3: the first 32 bits of the fractional parts of the square roots of the first eight primes.
const firstState = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];

// Section 4.2.2: the same of the cube roots of the first sixty-four primes.
const constants = [
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98,
  0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786,
  0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8,
  0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
  0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819,
  0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a,
  0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
  0xc67178f2,
];
