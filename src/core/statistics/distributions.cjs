/**
 * Distributions of the libraries, each loaded at its first call: Student t alone takes as long to load as a bare Node to
 * start, and a screen before its first run, or a short command, needs none. Required here, since only a required module can wait.
 */
module.exports = {
  /** @param {number} p @param {number} degreesOfFreedom */
  studentT: (p, degreesOfFreedom) => require('@stdlib/stats-base-dists-t-quantile')(p, degreesOfFreedom),
  /** @param {number} t @param {number} degreesOfFreedom */
  studentTCdf: (t, degreesOfFreedom) => require('@stdlib/stats-base-dists-t-cdf')(t, degreesOfFreedom),
  /** @param {number} p */
  normal: (p) => require('@stdlib/stats-base-dists-normal-quantile')(p, 0, 1),
  /** @param {number} t @param {number} degreesOfFreedom @param {number} noncentrality */
  noncentralTCdf: (t, degreesOfFreedom, noncentrality) =>
    require('jstat').noncentralt.cdf(t, degreesOfFreedom, noncentrality),
};
