import { graphql, withFragments } from '../graphql/document.js';
import { LinkParts } from './link-documents.js';
import { GivenRuling, Source } from './ruling-documents.js';

const list = graphql(`
  query DisagreementList($id: ID!) {
    me {
      id
    }
    count(id: $id) {
      id
      state
      timeZone
      myRoles
      may
      review {
        countId
        inputHash
        openMatters
        rulings {
          ...GivenRuling
        }
        disagreements {
          id
          kind
          severity
          birds
          text
          cell {
            id
            sections {
              id
              name
            }
            window {
              id
              start
              end
            }
            layer
          }
          group {
            id
          }
          link {
            id
          }
          observers {
            id
            name
          }
          ruling {
            id
            state
            text
            by {
              id
              name
            }
          }
          queries {
            id
            answer
          }
        }
      }
    }
  }
`);
export const DisagreementList = withFragments(list, GivenRuling);

const one = graphql(`
  query OneDisagreement($id: ID!, $disagreementId: ID!) {
    me {
      id
      name
    }
    count(id: $id) {
      id
      may
      timeZone
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
      review {
        countId
        inputHash
        rulings {
          ...GivenRuling
        }
        disagreement(id: $disagreementId) {
          id
          kind
          severity
          birds
          text
          observers {
            id
            name
          }
          cell {
            id
            sections {
              id
              name
            }
            window {
              id
              start
              end
            }
            layer
            feasible
            birdsInConflict
            witness
            groups {
              id
              taxa
              totals {
                observer
                observerName
                number
              }
              consensus {
                number
              }
            }
            tallies {
              tally
              observer
              observerName
              total
              coverage
              seenAreas
              conditions {
                visibility
                beaufort
                seaState
                iceCover
                glare
                disturbance
                optics
              }
              counted
              lines {
                taxon
                candidates
                number
                lines
              }
            }
            pairings {
              a
              b
              aName
              bName
              agreed
              compatible
              differently
              onlyA
              onlyB
              outsideScopeA
              outsideScopeB
              independent
              complete
              flows {
                kind
                a
                b
                number
              }
            }
            bounds {
              species
              observer
              atLeast
              atMost
            }
          }
          group {
            id
            taxa
            totals {
              observer
              observerName
              number
              stated
            }
            consensus {
              rule
              number
              low
              high
              q
              tau2
              i2
              predicted {
                low
                high
              }
              byRule {
                rule
                number
              }
            }
            lines {
              taxon
              candidates
              number
            }
          }
          link {
            ...LinkParts
          }
          lines {
            ...Source
          }
          proposals {
            text
            target {
              kind
              cell
              group
              link
              tally
              line
            }
            decision {
              kind
              observer
              rule
              from
              to
              numbers {
                taxon
                number
              }
            }
          }
          ruling {
            ...GivenRuling
          }
          queries {
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
            answeredAt
          }
        }
      }
    }
  }
`);
export const OneDisagreement = withFragments(one, GivenRuling, LinkParts, Source);
