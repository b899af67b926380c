import { graphql, withFragments } from '../graphql/document.js';
import { GivenRuling } from './ruling-documents.js';

export const LinkParts = graphql(`
  fragment LinkParts on Link {
    id
    kind
    probability
    birds
    proposed
    ruling
    deducted
    deduction {
      taxon
      number
    }
    first {
      ...SightingParts
    }
    second {
      ...SightingParts
    }
    evidence {
      name
      text
      weight
    }
  }

  fragment SightingParts on Sighting {
    cell
    section {
      id
      name
    }
    lines
    observers {
      id
      name
    }
    taxon
    number
    start
    end
    position
  }
`);

const FlockParts = graphql(`
  fragment FlockParts on Flock {
    lines
    observer {
      id
      name
    }
    sections {
      id
      name
    }
    window {
      id
    }
    taxon
    number
    start
    end
    timeNoted
    position
  }
`);

const AskedQuery = graphql(`
  fragment AskedQuery on ObserverQuery {
    id
    question
    askedAt
    askedBy {
      id
      name
    }
    to {
      id
      name
    }
    answer
  }
`);

const links = graphql(`
  query CountLinks($id: ID!) {
    me {
      id
    }
    count(id: $id) {
      id
      may
      timeZone
      windows {
        id
        start
        end
      }
      sections {
        id
        name
        polygon
      }
      vantages {
        id
        name
        position
        views
      }
      shoreline {
        isArea
        lines
      }
      protocol {
        linkThreshold
        deductLinks
      }
      queries {
        disagreementId
        ...AskedQuery
      }
      review {
        countId
        inputHash
        links {
          ...LinkParts
        }
        flocks {
          ...FlockParts
        }
        cells {
          id
          window {
            id
          }
        }
        disagreements(kind: "possible-double-count") {
          id
          link {
            id
          }
          queries {
            ...AskedQuery
          }
        }
        withheld
        rulings {
          ...GivenRuling
        }
      }
    }
  }
`);
export const CountLinks = withFragments(links, LinkParts, FlockParts, AskedQuery, GivenRuling);
