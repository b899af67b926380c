/** What is said of rulings, queries, postings and audit entries, and how flocks were missed. */
export const FRENCH_REVIEWS: Readonly<Record<string, string>> = {
  'Only {matched} flocks were seen by two or more of them; at least {least} are needed to say how many were missed.':
    'Bandes vues par au moins deux d’entre eux : {matched} seulement, alors qu’il en faut au moins {least} pour dire combien ont été manquées.',
  'One of them saw everything that the others saw, or nothing: how many were missed cannot be told.':
    'L’un d’eux a vu tout ce que les autres ont vu, ou rien : on ne peut dire combien ont été manquées.',
  'Some flocks are harder to see than others, so that more were missed than this and its interval say. It is of flocks of ten birds or more that can be told apart, not of birds.':
    'Certaines bandes sont plus difficiles à voir que d’autres ; il en a donc été manqué plus que ne le disent ce nombre et son intervalle. Il s’agit de bandes d’au moins dix oiseaux que l’on peut distinguer, non d’oiseaux.',
  '{target} is not there any more': '{target} ne s’y trouve plus',
  '{target} has changed since the ruling': '{target} a changé depuis la décision',
  '{target} is read as {taxon}': '{target} se lit comme {taxon}',
  '{target} is left out': 'sans {target}',
  '{kind}: {target}': '{kind} : {target}',
  'The tallies of {target} have changed since the ruling':
    'ses relevés ont changé depuis la décision ({target})',
  '{target} is no group of the count any more':
    '{target} ne correspond plus à aucun groupe du dénombrement',
  '{other} is no other group of {cell}, so {target} cannot be merged with it':
    'aucun autre groupe de la cellule {cell} ne répond à {other} ; {target} ne peut donc y être réuni',
  '{target} is not found in the tallies any more': '{target} ne se retrouve plus dans les relevés',
  'The tallies as a whole.': 'Les relevés dans leur ensemble.',
  'Your tallies as a whole.': 'Vos relevés dans leur ensemble.',
  'Birds of which your tally says nothing.': 'Des oiseaux dont votre relevé ne dit rien.',
  'These lines of yours: {lines}.': 'Ces lignes de votre relevé : {lines}.',
  '{section} in window {window}: you see it once your own tally there is in, or the window is closed.':
    '{section}, créneau {window} : vous le verrez une fois votre propre relevé reçu, ou le créneau fermé.',
  designated: 'observateur désigné',
  highest: 'le plus élevé',
  mean: 'moyenne',
  median: 'médiane',
  'random-effects': 'effets aléatoires',
  'weighted-mean': 'moyenne pondérée',
  'robust-mean': 'moyenne robuste',
  '{decision}: {target}': '{decision} : {target}',
  'The drafted numbers stand': 'Les nombres de l’ébauche sont maintenus',
  'The numbers of {observer} are taken': 'Les nombres notés par {observer} sont retenus',
  'Set to {numbers}': 'Nombres fixés : {numbers}',
  'Settled by the rule "{rule}"': 'Réglé selon la règle « {rule} »',
  '{from} compiled as {to}': '{from} compilé comme {to}',
  'Read as {taxon}': 'Lu comme {taxon}',
  'Settled together with {taxa}': 'Réglé avec {taxa}',
  'Taken apart into {parts}': 'Scindé en {parts}',
  'Left out': 'Écarté',
  'One flock, counted once': 'Une seule bande, dénombrée une fois',
  'Two flocks, both counted': 'Deux bandes, dénombrées toutes les deux',
  'The server {what}.': 'Le serveur {what}.',
  '{person} {what}.': '{person} {what}.',
  '{sections} in window {window}': '{sections}, créneau {window}',
  'planned the count': 'a planifié le dénombrement',
  'imported the count': 'a importé le dénombrement',
  'assigned {person} to {place}': 'a affecté {person} à {place}',
  'took an assignment of {person} back': 'a retiré une affectation à {person}',
  'closed window {window}': 'a fermé le créneau {window}',
  'submitted tally {tally} of {observer} for {place}':
    'a envoyé le relevé {tally} fait par {observer} pour {place}',
  'corrected tally {earlier} for {place}: version {version} is {tally}':
    'a corrigé le relevé {earlier} pour {place} : la version {version} est {tally}',
  'gave ruling {ruling}, which needs a second person':
    'a rendu la décision {ruling}, qui demande une seconde personne',
  'gave ruling {ruling}': 'a rendu la décision {ruling}',
  'seconded ruling {ruling}': 'a appuyé la décision {ruling}',
  'took ruling {ruling} back': 'a retiré la décision {ruling}',
  'put query {query} to {person}': 'a posé la question {query} à {person}',
  'answered query {query}': 'a répondu à la question {query}',
  'signed the count off as {role}': 'a signé le dénombrement comme {role}',
  'sealed the count': 'a scellé le dénombrement',
  '{birds} in {place}': '{birds}, secteur {place}',
  '{birds} in {places}': '{birds}, secteurs {places}',
  '{birds}: {people} agree on them.': '{birds} : concordance entre {people}.',
  '{birds}: {people} agree on them at different resolution.':
    '{birds} : concordance entre {people}, à des niveaux de précision différents.',
  '{birds}: seen by {people}, who identified them differently.':
    '{birds} : identifications différentes selon {people}.',
  '{birds}: only {person} has them.': '{birds} : seulement dans le relevé fait par {person}.',
  '{birds}: {person} is the only one whose count enters here.':
    '{birds} : le seul compte qui entre ici est celui fait par {person}.',
  '{birds} by the ruling': '{birds} par la décision',
  '{birds} by the ruling of {person}: {reason}':
    '{birds} par la décision rendue par {person} : {reason}',
  'Found twice: {birds} are taken off; the same flock is counted in another section.':
    'Comptés deux fois : {birds} à retirer ; la même bande est dénombrée dans un autre secteur.',
  'Found twice: {birds} are taken off; the same flock is counted in {place}.':
    'Comptés deux fois : {birds} à retirer ; la même bande est dénombrée dans le secteur {place}.',
  '{birds} from window {window}, its share of the mean over windows.':
    '{birds} du créneau {window}, sa part de la moyenne des créneaux.',
  '{birds} are added to reach the number of the rule "{rule}".':
    '{birds} en plus, pour atteindre le nombre de la règle « {rule} ».',
  '{birds} are taken off to reach the number of the rule "{rule}".':
    '{birds} en moins, pour atteindre le nombre de la règle « {rule} ».',
  '{birds} go into the compiled count by the rule "{rule}".':
    '{birds} : au dénombrement compilé, selon la règle « {rule} ».',
};
