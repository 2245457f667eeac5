/**
 * ASTM A255-10, non-boron steel: polynomials in the ideal diameter [in] that divide the initial hardness, by distance in
 * sixteenths of an inch. Below `limitIn` the polynomial holds; from it on the hardness is still that of the quenched end.
 * Rows 7, 9, 10 and 18-32 rest on one public record, the others on two; all give 1.003..1.015 at their limit.
 */
export const DIVIDING_FACTORS: readonly {
  readonly sixteenths: number
  readonly limitIn: number
  readonly coefficients: readonly [number, number, number, number, number, number]
}[] = [
  { sixteenths: 2, limitIn: 2.1, coefficients: [4.68961, -11.00832, 13.83314, -8.80283, 2.78698, -0.3488] },
  { sixteenths: 3, limitIn: 3.1, coefficients: [2.34904, -0.28254, -1.42995, 1.16697, -0.33813, 0.03403] },
  { sixteenths: 4, limitIn: 4.1, coefficients: [5.66795, -6.14648, 3.52874, -1.06026, 0.16301, -0.01015] },
  { sixteenths: 5, limitIn: 4.4, coefficients: [4.52902, -2.90739, 0.986508, -0.163586, 0.012095, -0.000257202] },
  { sixteenths: 6, limitIn: 5.0, coefficients: [4.39436, -2.16072, 0.56027, -0.08145, 0.0084, -0.000530827] },
  { sixteenths: 7, limitIn: 5.3, coefficients: [4.15002, -1.43154, 0.00235893, 0.112947, -0.0237546, 0.00150903] },
  { sixteenths: 8, limitIn: 5.6, coefficients: [4.44473, -1.79085, 0.24617, 0.03378, -0.01189, 0.000841843] },
  { sixteenths: 9, limitIn: 5.8, coefficients: [4.95421, -2.43521, 0.62983, -0.07914, 0.00399154, -0.0000120363] },
  { sixteenths: 10, limitIn: 6.1, coefficients: [5.3161, -2.80977, 0.84183, -0.141781, 0.0130138, -0.000512388] },
  { sixteenths: 12, limitIn: 6.6, coefficients: [5.63649, -2.89264, 0.90309, -0.17297, 0.01881, -0.00086593] },
  { sixteenths: 14, limitIn: 7.0, coefficients: [5.83176, -2.99646, 0.94088, -0.17734, 0.0183885, -0.000790018] },
  { sixteenths: 16, limitIn: 7.0, coefficients: [6.06952, -3.15198, 0.99297, -0.1801, 0.0172029, -0.000664079] },
  { sixteenths: 18, limitIn: 7.0, coefficients: [7.32018, -4.60605, 1.68442, -0.338443, 0.0345114, -0.00138927] },
  { sixteenths: 20, limitIn: 7.0, coefficients: [7.81382, -5.10022, 1.92141, -0.394591, 0.040784, -0.00165327] },
  { sixteenths: 24, limitIn: 7.0, coefficients: [9.18138, -6.69048, 2.75891, -0.611613, 0.0677165, -0.0029307] },
  { sixteenths: 28, limitIn: 7.0, coefficients: [9.27904, -6.21461, 2.33158, -0.46972, 0.0472654, -0.00186035] },
  { sixteenths: 32, limitIn: 7.0, coefficients: [8.62857, -5.16125, 1.81214, -0.35489, 0.035687, -0.001434] },
]
