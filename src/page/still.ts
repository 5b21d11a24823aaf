/** Still for this long before sheets and job card are laid, ms. */
export const still = 350
