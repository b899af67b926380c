import { graphql, withFragments } from '../graphql/document.js';
import { Source } from '../reviews/ruling-documents.js';

export const CompiledCountPage = graphql(`
  query CompiledCountPage($id: ID!) {
    count(id: $id) {
      id
      state
      may
      compiled {
        countId
        reported
        draft
        total
        flyingThroughTotal
        lines {
          taxon
          candidates
          number
          low
          high
          atLeast
          atMost
          flyingThrough
          presentNotCounted
        }
        allocation {
          species
          identified
          estimated
          low
          high
          interval
          undetermined
          of {
            taxon
            number
            estimated
          }
        }
        signOffs {
          by {
            id
            name
          }
          as
          at
          inputHash
        }
        seal {
          id
          at
          by {
            id
            name
          }
          inputHash
          resultHash
          auditRoot
          auditSize
        }
      }
    }
  }
`);

const ledger = graphql(`
  query LineLedger($id: ID!, $taxon: String!) {
    count(id: $id) {
      id
      compiled {
        countId
        reported
        line(taxon: $taxon) {
          taxon
          number
        }
        ledger(taxon: $taxon) {
          id
          from
          to
          taxon
          number
          becauseKind
          becauseRef
          text
          lines {
            ...Source
          }
        }
      }
    }
  }
`);
export const LineLedger = withFragments(ledger, Source);

export const CountAudit = graphql(`
  query CountAudit($id: ID!, $first: Int, $before: Int) {
    count(id: $id) {
      id
      timeZone
      auditTrail(first: $first, before: $before) {
        size
        intact
        entries {
          seq
          at
          by {
            id
            name
          }
          act
          text
          body
          hash
          previous
        }
      }
    }
  }
`);

export const SignOff = graphql(`
  mutation SignOff($countId: ID!, $as: Role!, $inputHash: String!) {
    signOff(countId: $countId, as: $as, inputHash: $inputHash) {
      id
      state
      may
    }
  }
`);

export const SealCount = graphql(`
  mutation SealCount($countId: ID!) {
    seal(countId: $countId) {
      id
      at
      resultHash
    }
  }
`);

export const SignOffStanding = graphql(`
  query SignOffStanding($id: ID!) {
    count(id: $id) {
      id
      state
      may
      myRoles
      protocol {
        signOffs
      }
      review {
        countId
        inputHash
        openMatters
      }
      compiled {
        countId
        signOffs {
          by {
            id
            name
          }
          as
          at
          inputHash
        }
        seal {
          id
        }
      }
    }
  }
`);
