import { graphql } from '../graphql/document.js';

export const Me = graphql(`
  query Me {
    me {
      id
      name
    }
  }
`);

export const SignIn = graphql(`
  mutation SignIn($name: String!, $password: String!) {
    signIn(name: $name, password: $password) {
      id
      name
    }
  }
`);

export const AcceptInvite = graphql(`
  mutation AcceptInvite($token: String!) {
    acceptInvite(token: $token) {
      id
      name
    }
  }
`);

export const SignOut = graphql(`
  mutation SignOut {
    signOut
  }
`);

export const MakeInvite = graphql(`
  mutation MakeInvite($countId: ID!, $personId: ID!) {
    invite(countId: $countId, personId: $personId) {
      person {
        id
        name
      }
      path
    }
  }
`);
