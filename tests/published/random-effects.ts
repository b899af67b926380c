/**
 * Tuberculosis vaccine trials: 13 log risk ratios and their variances.
 * Source: Colditz et al. (1994) JAMA 271:698-702; Berkey et al. (1995) Stat Med 14:395-411; R data
 * dat.bcg; Viechtbauer W (2010) J Stat Softw 36(3).
 * Expected: computed with the R package metafor 3.8.1 on the published data, and re-derived in
 * Python. Printed values (Viechtbauer 2010, from memory): Q 152.2330, tau2 of DerSimonian & Laird
 * 0.3088, by restricted likelihood 0.3132, mean -0.7145, s.e. 0.1798.
 */
export const BCG = {
  yi: [
    -0.889311333920205, -1.58538865720143, -1.34807314829969, -1.44155119002131, -0.217547322211296,
    -0.786115585818864, -1.62089822359839, 0.0119523335238405, -0.469417648738149,
    -1.37134480347278, -0.339358828338391, 0.445913400571379, -0.0173139482168798,
  ],
  vi: [
    0.325584765003961, 0.194581121398144, 0.415367965367965, 0.0200100319022476, 0.0512101721696309,
    0.00690561845590876, 0.223017247572315, 0.00396157929781773, 0.056434210463249,
    0.0730247936130289, 0.0124122139715597, 0.532505845200153, 0.0714046596839863,
  ],
  expected: {
    Q: 152.233008082,
    df: 12,
    Q_p: 1.99676459085e-26,
    fixed: {
      mu: -0.430285163654,
      se: 0.0404987517109,
      lower: -0.509661258426,
      upper: -0.350909068882,
    },
    DL: {
      tau2: 0.308760262862,
      mu: -0.714117222073,
      se: 0.178742089535,
      lower: -1.06444528008,
      upper: -0.363789164062,
      I2_percent: 92.1173468546,
      H2: 12.6860840069,
    },
    PM: {
      tau2: 0.318068452205,
      mu: -0.714968153493,
      se: 0.180892191538,
      lower: -1.06951033399,
      upper: -0.360425972995,
      I2_percent: 92.3303379542,
      H2: 13.0383841429,
    },
    REML: {
      tau2: 0.313243258136,
      mu: -0.714532342158,
      se: 0.179781516105,
      lower: -1.06689763881,
      upper: -0.362167045506,
      I2_percent: 92.2213845213,
      H2: 12.8557582353,
    },
    ML: {
      tau2: 0.280028137269,
      mu: -0.711199135474,
      se: 0.171896808777,
      lower: -1.04811068973,
      upper: -0.374287581214,
      I2_percent: 91.3782837894,
      H2: 11.5986188315,
    },
    tau2_ci95_Q_profile: [0.119718361141, 1.11147908406],
    DL_knapp_hartung: {
      mu: -0.714117222073,
      se: 0.180696628336,
      lower: -1.10782135417,
      upper: -0.320413089978,
    },
    DL_prediction_interval95: [-1.85815375273, 0.429919308586],
  },
} as const;

/**
 * Two sets of measurements whose means lie far apart.
 * Source: Paule RC, Mandel J (1982) J Res NBS 87:377-385, second example; data as in the help of the
 * R package metRology (mpaule).
 * Expected: computed with the R package metafor 3.8.1, Q, tau2 and means re-derived in Python;
 * the upper Q-profile limit is the Python root (metafor cuts it off unless told otherwise).
 */
export const PAULE_MANDEL_TWO_SETS = {
  yi: [201.533, 216.55],
  vi: [0.00395266666666667, 0.03125],
  expected: {
    Q: 6406.05699379,
    df: 1,
    fixed: { mu: 203.219156219, se: 0.059235536306, lower: 203.103056701, upper: 203.335255737 },
    DL: {
      tau2: 112.737543167,
      mu: 209.040591119,
      se: 7.50849994499,
      lower: 194.324201649,
      upper: 223.756980589,
      I2_percent: 99.9843897736,
      H2: 6406.05699379,
    },
    PM: {
      tau2: 112.737543167,
      mu: 209.040591119,
      se: 7.50849994499,
      lower: 194.324201649,
      upper: 223.756980589,
      I2_percent: 99.9843897736,
      H2: 6406.05699379,
    },
    REML: {
      tau2: 112.737543167,
      mu: 209.040591119,
      se: 7.50849994499,
      lower: 194.324201649,
      upper: 223.756980589,
      I2_percent: 99.9843897736,
      H2: 6406.05699379,
    },
    ML: {
      tau2: 56.3599676124,
      mu: 209.039682238,
      se: 5.30931095536,
      lower: 198.633623983,
      upper: 219.445740493,
      I2_percent: 99.9687795454,
      H2: 3203.02830917,
    },
    tau2_ci95_Q_profile: [22.4262081591, 114813.840739],
    DL_knapp_hartung: {
      mu: 209.040591119,
      se: 7.50849994499,
      lower: 113.636053556,
      upper: 304.445128682,
    },
    DL_prediction_interval95: [183.552383087, 234.52879915],
  },
} as const;
