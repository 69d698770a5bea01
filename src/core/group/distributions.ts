/** Quantiles and cumulated shares of distributions, by a library. Degrees of freedom need not be whole. */
import jstat from 'jstat';

/** The value that a share (0 to 1) of an F variable with these degrees of freedom lies below. */
export const findQuantileOfF = (share: number, over: number, under: number): number =>
  jstat.centralF.inv(share, over, under);

/** The share (0 to 1) of an F variable with these degrees of freedom that lies below a value. */
export const cumulateF = (value: number, over: number, under: number): number =>
  jstat.centralF.cdf(value, over, under);

/** The value that a share (0 to 1) of a standard normal variable lies below. */
export const quantileOfNormal = (share: number): number => jstat.normal.inv(share, 0, 1);

/** The value that a share (0 to 1) of a chi-square variable with these degrees of freedom lies below. */
export const findQuantileOfChiSquare = (share: number, freedom: number): number =>
  jstat.chisquare.inv(share, freedom);
