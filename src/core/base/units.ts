/** A length in millimetres. Every length inside the program is one of these; cm and inches exist only at the screen. */
export type Mm = number

/** An angle in degrees, counter-clockwise. Radians live only inside a function. */
export type Deg = number

/** A share in per cent, as stretch is given: 40 means that 10 cm reaches 14 cm. */
export type Percent = number

/** Exact by the international yard and pound agreement of 1959. */
export const MM_PER_INCH = 25.4
