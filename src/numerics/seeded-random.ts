/**
 * Seeded random numbers: the same seed gives the same numbers to the bit, and a fork is a stream of its own.
 *
 * The generator is xoroshiro128+ [blackman2021] from pure-rand. A stream is named by its seed and the labels of its forks
 * ("7/recorder"); the name is hashed to the 128 bits of state, so that a fork does not depend on how many numbers were
 * drawn before it, and adding a draw in one part of a program leaves every other part alone.
 */
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";

export type SeededRandom = {
  /** uniform in [0, 1) */
  uniform(): number;
  /** mean 0, standard deviation 1 */
  normal(): number;
  /** both ends included */
  integer(low: number, high: number): number;
  /** an independent stream, the same whatever was drawn before */
  fork(label: string): SeededRandom;
};

export function seededRandom(seed: number): SeededRandom {
  return stream(String(seed));
}

function stream(name: string): SeededRandom {
  const generator = xoroshiro128plusFromState([1, 2, 3, 4].map((salt) => hash(name, salt)));
  const uniform = () => uniformFloat64(generator);
  let spare: number | null = null;

  /** Polar method of Marsaglia and Bray: two normals for each accepted point of the unit disc. */
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    }
  };

  return {
    uniform,
    normal,
    integer: (low, high) => uniformInt(generator, low, high),
    fork: (label) => stream(`${name}/${label}`),
  };
}

/** 32-bit FNV-1a over the UTF-16 units, then an avalanche step so that near names share no bits. */
function hash(text: string, salt: number): number {
  let h = Math.imul(0x811c9dc5 ^ salt, 0x01000193);
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
