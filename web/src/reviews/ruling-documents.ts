import { graphql } from '../graphql/document.js';

export const GiveRuling = graphql(`
  mutation GiveRuling($input: RulingInput!) {
    giveRuling(input: $input) {
      id
      state
      text
      inputHash
    }
  }
`);

export const SecondRuling = graphql(`
  mutation SecondRuling($rulingId: ID!) {
    secondRuling(rulingId: $rulingId) {
      id
      state
    }
  }
`);

export const WithdrawRuling = graphql(`
  mutation WithdrawRuling($rulingId: ID!, $reason: String!) {
    withdrawRuling(rulingId: $rulingId, reason: $reason) {
      id
      state
    }
  }
`);

export const AskQuery = graphql(`
  mutation AskQuery($input: AskQueryInput!) {
    askQuery(input: $input) {
      id
    }
  }
`);

export const GivenRuling = graphql(`
  fragment GivenRuling on Ruling {
    id
    by {
      id
      name
    }
    at
    reason
    state
    text
    replaces
    secondedBy {
      id
      name
    }
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
      with
      parts
    }
  }
`);

export const Source = graphql(`
  fragment Source on SourceLine {
    line {
      id
      written
      taxon
      number
      low
      high
      present
      method
      totalMethod
      block
      activity
      time
      flock
      certainty
      note
    }
    tally {
      id
      version
      start
      end
      coverage
      observer {
        id
        name
      }
      sections {
        id
        name
      }
    }
  }
`);
