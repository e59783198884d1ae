// Shares and quantiles of the distributions under every verdict. Printed tables are from memory of them (they stand alike in any
// textbook); values by mpmath and SciPy were computed with no code of this project.
import {
  chiSquareCdf,
  chiSquareQuantile,
  digamma,
  fCdf,
  fQuantile,
  logGamma,
  noncentralTCdf,
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
  trigamma,
  trigammaInverse,
} from '@pullbook/core/numeric';
import { describe, expect, test } from 'vitest';
import { readCsv, relativeError } from './read-csv.ts';

const T_SHARES: [t: number, df: number, share: number][] = [
  [-6, 0.3, 0.20403133932432382],
  [-30, 1, 0.010606402405535424],
  [-30, 2, 0.0005546313409798294],
  [-30, 2.5, 0.0001455323545786977],
  [0.4, 2.5, 0.6395903655346385],
  [1.9, 2.5, 0.9141269788331327],
  [-6, 4, 0.0019412685234802551],
  [-0.001, 60, 0.4996027165115709],
  [1.9, 350, 0.9708726176417507],
  [-2.1, 1e4, 0.017876913928105375],
  [0.4, 1e4, 0.6554174697375732],
];

const F_SHARES: [x: number, above: number, below: number, share: number][] = [
  [1, 0.5, 1, 0.6022432216826442],
  [1, 1, 40, 0.6766781882517091],
  [0.05, 2, 500, 0.048765819974334115],
  [1, 2, 500, 0.6313860237639857],
  [0.05, 3.7, 8, 0.007653546005049579],
  [0.5, 3.7, 8, 0.2744460829417222],
  [0.0001, 3.7, 500, 7.12351325837172e-8],
  [6, 3.7, 500, 0.999836706972289],
  [0.0001, 10, 1, 2.4496895554198304e-16],
  [0.05, 10, 40, 1.0020837718711098e-5],
  [0.5, 10, 40, 0.12026012954128422],
  [1, 120, 2.2, 0.377057356009412],
  [1, 120, 8, 0.43975806626862013],
];

const CHI_SQUARE_SHARES: [x: number, df: number, share: number][] = [
  [0.12, 0.4, 0.6143470022433121],
  [1, 1, 0.6826894921370859],
  [2, 2, 0.6321205588285577],
  [3, 2, 0.7768698398515702],
  [48, 60, 0.13212358467196939],
  [120, 400, 6.7496960069765534e-46],
  [4000, 5000, 2.9491918869834726e-27],
  [5000, 5000, 0.5026596211076548],
];

describe('Student’s t', () => {
  const table = readCsv('student-t.csv').map((row) => row.map(Number));

  test('quantiles to the four places of the table', () => {
    expect(table).toHaveLength(33);
    for (const [df, ...row] of table)
      [0.9, 0.95, 0.975, 0.99, 0.995].forEach((p, i) => {
        expect(Math.abs(studentTQuantile(p, df!) - row[i]!)).toBeLessThan(0.5001e-4);
      });
  });

  test('last line of the table: the normal distribution', () => {
    [1.2816, 1.6449, 1.96, 2.3263, 2.5758].forEach((z, i) => {
      const p = [0.9, 0.95, 0.975, 0.99, 0.995][i]!;
      expect(normalQuantile(p)).toBeCloseTo(z, 4);
      expect(studentTQuantile(p, Number.POSITIVE_INFINITY)).toBe(normalQuantile(p));
    });
  });

  test.each(T_SHARES)('share below %f with %f degrees of freedom, by mpmath', (t, df, share) => {
    expect(relativeError(studentTCdf(t, df), share)).toBeLessThan(1e-12);
    expect(relativeError(studentTQuantile(share, df), t)).toBeLessThan(1e-10);
  });

  test('one and two degrees of freedom by their closed forms', () => {
    for (const t of [-80, -3, -0.2, 0.7, 12]) {
      expect(studentTCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14);
      expect(studentTCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 14);
    }
  });
});

describe('F', () => {
  // Upper 5 % and 1 % points as printed, from memory.
  test.each([
    [0.95, 1, 1, 161.4, 0.05],
    [0.95, 1, 10, 4.96, 0.005],
    [0.95, 2, 10, 4.1, 0.005],
    [0.95, 3, 10, 3.71, 0.005],
    [0.95, 5, 10, 3.33, 0.005],
    [0.95, 10, 10, 2.98, 0.005],
    [0.95, 4, 20, 2.87, 0.005],
    [0.95, 10, 20, 2.35, 0.005],
    [0.99, 1, 10, 10.04, 0.005],
    [0.99, 5, 20, 4.1, 0.005],
    [0.95, 10, Number.POSITIVE_INFINITY, 1.83, 0.005],
    [0.95, Number.POSITIVE_INFINITY, 10, 2.54, 0.005],
  ])('%f point of %f and %f degrees of freedom is %f', (p, above, below, printed, half) => {
    expect(Math.abs(fQuantile(p, above, below) - printed)).toBeLessThan(half * 1.01);
  });

  test.each(F_SHARES)(
    'share below %f of %f and %f degrees of freedom, by mpmath',
    (x, above, below, share) => {
      expect(relativeError(fCdf(x, above, below), share)).toBeLessThan(1e-12);
      expect(relativeError(fQuantile(share, above, below), x)).toBeLessThan(1e-10);
    },
  );
});

describe('chi-squared', () => {
  // As printed, from memory.
  test.each([
    [0.95, 1, 3.841],
    [0.95, 2, 5.991],
    [0.95, 5, 11.07],
    [0.95, 10, 18.307],
    [0.95, 30, 43.773],
    [0.99, 1, 6.635],
    [0.99, 5, 15.086],
    [0.99, 10, 23.209],
    [0.05, 5, 1.145],
    [0.05, 10, 3.94],
  ])('%f point of %f degrees of freedom is %f', (p, df, printed) => {
    expect(Math.abs(chiSquareQuantile(p, df) - printed)).toBeLessThan(0.000501);
  });

  test.each(CHI_SQUARE_SHARES)('share below %f with %f degrees of freedom, by mpmath', (x, df, share) => {
    expect(relativeError(chiSquareCdf(x, df), share)).toBeLessThan(1e-12);
    expect(relativeError(chiSquareQuantile(share, df), x)).toBeLessThan(1e-10);
  });
});

test.each([
  [-12, 1.776482112077679e-33],
  [-2.4, 0.008197535924596131],
  [-1, 0.15865525393145705],
  [-0.1, 0.460172162722971],
  [0, 0.5],
  [0.3, 0.6179114221889527],
  [2.2, 0.9860965524865014],
  [2.7, 0.9965330261969594],
  [5, 0.9999997133484281],
])('normal share below %f, by mpmath', (z, share) => {
  expect(relativeError(normalCdf(z), share)).toBeLessThan(1e-13);
  // Near 1 a share's own last digit is all there is to go by.
  if (z < 3) expect(Math.abs(normalQuantile(share) - z)).toBeLessThan(1e-12 * Math.max(1, Math.abs(z)));
});

describe('shifted t: the chance to see a difference', () => {
  // By SciPy and by mpmath's quadrature of the mean over the chi distribution, which agree to 1e-14.
  test.each([
    [2.228139, 10, 3, 0.22859982322816522],
    [3.182446, 3, 2, 0.7114512835636922],
    [12.7062, 1, 4, 0.7536447729662935],
    [2, 30, -1, 0.9980855981660497],
    [-1.5, 5, 1.2, 0.008054987974936976],
    [0, 7, 1, 0.15865525393145705],
    [2.0049, 54, 3.7, 0.04711988850006307],
    [6, 4, 20, 3.7250027410967904e-8],
  ])('share below %f with %f degrees of freedom and a shift of %f', (t, df, shift, share) => {
    expect(Math.abs(noncentralTCdf(t, df, shift) - share)).toBeLessThan(1e-10);
  });

  test('without a shift it is Student’s t; with the scatter known a shifted normal', () => {
    expect(noncentralTCdf(1.7, 6, 0)).toBeCloseTo(studentTCdf(1.7, 6), 11);
    expect(noncentralTCdf(1.96, Number.POSITIVE_INFINITY, 2.8)).toBeCloseTo(normalCdf(-0.84), 14);
  });
});

describe('gamma function and its derivatives, by mpmath', () => {
  test.each([
    [1e-5, 11.512919692895826],
    [0.1, 2.252712651734206],
    [0.5, 0.5723649429247001],
    [1.3, -0.10817480950786047],
    [5.5, 3.9578139676187165],
    [9.9, 12.57717990421988],
    [100, 359.1342053695754],
    [1e6, 12815504.569147611],
  ])('ln Γ(%f)', (x, value) => expect(relativeError(logGamma(x), value)).toBeLessThan(1e-13));

  test.each([
    [0.5, -1.9635100260214235],
    [1.3, -0.16919088886679962],
    [2.5, 0.7031566406452432],
    [9.9, 2.2411803166063815],
    [100, 4.600161852738087],
    [1e6, 13.815510057964191],
  ])('digamma(%f)', (x, value) => expect(relativeError(digamma(x), value)).toBeLessThan(1e-13));

  test.each([
    [1e-5, 10000000001.644909],
    [0.5, 4.934802200544679],
    [1.3, 1.1342534349966193],
    [5.5, 0.19934238698962767],
    [9.9, 0.1062830416287406],
    [100, 0.010050166663333571],
    [1e6, 1.0000005000001667e-6],
  ])('trigamma(%f) and back', (x, value) => {
    expect(relativeError(trigamma(x), value)).toBeLessThan(1e-13);
    expect(relativeError(trigammaInverse(value), x)).toBeLessThan(1e-12);
  });
});
