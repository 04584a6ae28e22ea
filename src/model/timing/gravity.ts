/** Standard acceleration of free fall (m/s²). Source: 3rd General Conference on Weights and Measures, 1901. */
export const gravity = 9.80665
