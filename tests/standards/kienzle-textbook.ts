/**
 * A second set of cutting-force constants, which the program does not use: [material, kc1.1 N/mm2, exponent, reference rake].
 * Source: Dietrich/Tschaetsch, Praxis der Zerspantechnik, kc1.1 table, from memory; ten rows agree within 6 % with a fit of the
 * table in a chuck manual.
 */
export const kienzleTextbook: readonly (readonly [material: string, kc11: number, exponent: number, rake: number])[] = [
  ['S275JR / St 44 (mild steel)', 1780, 0.17, 6],
  ['E295 / St 50-2', 1990, 0.26, 6],
  ['E335 / St 60-2', 2110, 0.17, 6],
  ['E360 / St 70-2', 2260, 0.3, 6],
  ['C15', 1820, 0.22, 6],
  ['C35', 1860, 0.2, 6],
  ['C45E', 2220, 0.14, 6],
  ['C60E', 2130, 0.18, 6],
  ['16MnCr5', 2100, 0.26, 6],
  ['18CrNi6/8', 2260, 0.3, 6],
  ['34CrMo4', 2240, 0.21, 6],
  ['42CrMo4', 2500, 0.26, 6],
  ['50CrV4', 2220, 0.26, 6],
  ['GS-45 cast steel', 1600, 0.17, 6],
  ['GS-52 cast steel', 1780, 0.17, 6],
  ['EN-GJL-200 (GG-20) grey iron', 1020, 0.25, 2],
  ['EN-GJL-250 (GG-25) grey iron', 1160, 0.26, 2],
  ['chilled/hard cast iron', 2060, 0.19, 2],
  ['brass (Messing)', 780, 0.18, 0],
]
