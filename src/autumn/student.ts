/**
 * Student's t with a probability of 0.975, for 1 to 30 degrees of freedom (any printed table), so that a phone needs
 * no statistics library to say how sure a count is.
 */
const T_975 = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131,
  2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
] as const;

/** Beyond the table: the normal quantile and the first term of its series in 1/freedom. */
const BEYOND = (freedom: number) => 1.95996 + 2.3723 / freedom;

/** Half the width of a 95 % interval, in standard errors. @param freedom degrees of freedom, 1 or more */
export const student95 = (freedom: number): number => T_975[freedom - 1] ?? BEYOND(freedom);
