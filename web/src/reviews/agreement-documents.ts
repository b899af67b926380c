import { graphql, withFragments } from '../graphql/document.js';

/** What both documents ask of a pair and of an observer. */
const SharedParts = graphql(`
  fragment StatisticParts on Statistic {
    value
    low
    high
    n
  }

  fragment Measures on AgreementMeasures {
    percentAgreement {
      ...StatisticParts
    }
    brayCurtisSimilarity {
      ...StatisticParts
    }
    concordance {
      ...StatisticParts
    }
    withinTolerance {
      ...StatisticParts
    }
    alpha {
      ...StatisticParts
    }
    kappa {
      ...StatisticParts
    }
    weightedKappa {
      ...StatisticParts
    }
    adjustedKappa {
      ...StatisticParts
    }
  }

  fragment PairParts on PairAgreement {
    a {
      id
      name
    }
    b {
      id
      name
    }
    measures {
      ...Measures
    }
    ratios {
      points {
        cell
        group
        taxa
        a
        b
        mean
        ratio
      }
      meanRatio {
        ...StatisticParts
      }
      lower {
        ...StatisticParts
      }
      upper {
        ...StatisticParts
      }
    }
    confusion {
      ...ConfusionParts
    }
    sensitivities {
      taxon
      byA
      byB
      byBoth
      ofA {
        ...StatisticParts
      }
      ofB {
        ...StatisticParts
      }
    }
  }

  fragment ConfusionParts on ConfusionTable {
    taxa
    entries {
      a
      b
      number
    }
  }

  fragment RatioParts on ObserverRatio {
    observer {
      id
      name
    }
    ratio {
      ...StatisticParts
    }
  }
`);

/** All that a compiler or leader may see; what is about single observers comes to leaders alone. */
const ofCount = graphql(`
  query CountAgreement($id: ID!) {
    count(id: $id) {
      id
      review {
        countId
        inputHash
        withheld
        agreement {
          minimumUnits
          overall {
            ...Measures
          }
          byPair {
            ...PairParts
          }
          byTaxon {
            taxon
            percentAgreement {
              ...StatisticParts
            }
            brayCurtisSimilarity {
              ...StatisticParts
            }
            concordance {
              ...StatisticParts
            }
            withinTolerance {
              ...StatisticParts
            }
            alpha {
              ...StatisticParts
            }
            sensitivity {
              ...StatisticParts
            }
          }
          bySection {
            sections {
              id
              name
            }
            measures {
              ...Measures
            }
          }
          intraclass {
            ...IntraclassParts
          }
          confusion {
            ...ConfusionParts
          }
          detection {
            ...DetectionParts
          }
          observers {
            ...RatioParts
          }
          observerModel {
            ...ObserverModelParts
          }
          observerConsistency {
            ...ConsistencyParts
          }
        }
      }
    }
  }

  fragment IntraclassParts on Intraclass {
    observers {
      id
      name
    }
    oneWaySingle {
      ...StatisticParts
    }
    oneWayMean {
      ...StatisticParts
    }
    agreementSingle {
      ...StatisticParts
    }
    agreementMean {
      ...StatisticParts
    }
    consistencySingle {
      ...StatisticParts
    }
    consistencyMean {
      ...StatisticParts
    }
  }

  fragment ObserverModelParts on ObserverModel {
    n
    groups
    betweenGroups {
      ...StatisticParts
    }
    betweenObservers {
      ...StatisticParts
    }
    residual {
      ...StatisticParts
    }
    observers {
      observer {
        id
        name
      }
      ratio {
        ...StatisticParts
      }
      set
    }
  }

  fragment ConsistencyParts on ObserverConsistency {
    groups
    hCritical {
      questioned
      serious
    }
    kCritical {
      questioned
      serious
    }
    observers {
      observer {
        id
        name
      }
      h
      k
    }
  }

  fragment DetectionParts on Detection {
    observers {
      id
      name
    }
    sections {
      id
      name
    }
    seen
    matched
    byObserver {
      observer {
        id
        name
      }
      flocks
      chance {
        ...StatisticParts
      }
    }
    flocks {
      ...StatisticParts
    }
    missedByAll {
      ...StatisticParts
    }
    model {
      slopes {
        covariate
        slope
        standardError
      }
      flocks {
        ...StatisticParts
      }
      birds {
        ...StatisticParts
      }
      missedByAll {
        ...StatisticParts
      }
    }
    warning
  }
`);
export const CountAgreement = withFragments(ofCount, SharedParts);

/** What an observer may see: their own pairs and their own ratio. */
const ofOwn = graphql(`
  query OwnAgreement($id: ID!) {
    count(id: $id) {
      id
      ownAgreement {
        minimumUnits
        byPair {
          ...PairParts
        }
        ratios {
          ...RatioParts
        }
      }
    }
  }
`);
export const OwnAgreement = withFragments(ofOwn, SharedParts);
