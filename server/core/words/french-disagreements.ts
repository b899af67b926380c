/** What the engine says of disagreements, and what it proposes for them. Names stand where they need no article. */
export const FRENCH_DISAGREEMENTS: Readonly<Record<string, string>> = {
  '{others}; {last}': '{others} ; {last}',
  'birds of the group {taxon}': 'groupe {taxon}',
  'In {place}': 'Dans le secteur {place}',
  'In {places}': 'Dans les secteurs {places}',
  'Flying through {place}': 'De passage en vol à {place}',
  'in {place}': 'dans le secteur {place}',
  'in {places}': 'dans les secteurs {places}',
  'flying through {place}': 'de passage en vol à {place}',
  '{number} {taxon}': '{number} {taxon}',
  '{birds} {where}': '{birds} {where}',
  '0 birds': '0 oiseau',
  '1 bird': '1 oiseau',
  '{number} birds': '{number} oiseaux',
  '{first}, and {rest} more otherwise': '{first}, et encore {rest} sous d’autres noms',
  'Let the draft stand: none': 'Maintenir l’ébauche : aucun oiseau',
  'Let the draft stand: {lines}': 'Maintenir l’ébauche : {lines}',
  "Take {observer}'s own lines, {total} birds":
    'Retenir les lignes notées par {observer} (total : {total})',
  '{highest} counted {high} {taxa} {where} and {lowest} {low}: {apart} apart, {verdict}.':
    'Oiseaux comptés {where} ({taxa}) : {high} par {highest} et {low} par {lowest} ; {apart} d’écart, {verdict}.',
  'within their counting error': 'dans les limites de leur erreur de dénombrement',
  'more than counting error usually explains':
    'plus que n’explique d’ordinaire l’erreur de dénombrement',
  'far more than counting error explains': 'bien plus que n’explique l’erreur de dénombrement',
  'Take the highest, {number}': 'Retenir le plus élevé, {number}',
  '{observers} counted {numbers} {taxa} {where}; {silence}.':
    'Oiseaux comptés {where} ({taxa}) : {numbers} par {observers} ; {silence}.',
  '{observers} wrote down a zero': 'zéro noté par {observers}',
  '{observers} listed none': 'rien de noté par {observers}',
  'Count none: they were not there': 'N’en compter aucun : ils n’étaient pas là',
  '{birds} as {taxon} that {other} has as {otherTaxon}':
    '{birds} comme {taxon} ({otherTaxon} selon {other})',
  '{where} {observer} has {birds}.': '{where}, selon {observer} : {birds}.',
  'Leave these birds at the coarser level': 'Laisser ces oiseaux au niveau le moins précis',
  'Only {observers}, who did not count all of {place}, counted {taxa} there: {number} is a lower bound.':
    'Oiseaux comptés seulement par {observers}, sans que tout soit couvert ({place} ; {taxa}) : {number} est une borne inférieure.',
  '{observer} counted only part of {place} but has {number} {taxa}, more than the {drafted} drafted from full tallies.':
    '{place} : une partie seulement a été comptée par {observer}, mais avec {number} oiseaux ({taxa}), plus que l’ébauche tirée des relevés complets ({drafted}).',
  '{observers} saw {taxa} {where} but did not count them; nobody else has a number, so the compiled count has none.':
    'Oiseaux vus {where} par {observers} ({taxa}), mais non comptés ; personne d’autre n’a de nombre, le dénombrement compilé n’en a donc pas.',
  '{observers} saw {taxa} {where} but did not count them; the draft of {number} rests on the others.':
    'Oiseaux vus {where} par {observers} ({taxa}), mais non comptés ; l’ébauche ({number}) repose sur les autres.',
  '{where} {flocks} are taken for one flock: {calls}.':
    '{where}, {flocks} sont tenues pour une seule bande ; {calls}.',
  "{person}'s flock ({birds})": 'la bande notée par {person} ({birds})',
  "{person}'s “{label}” ({birds})": 'la bande « {label} » notée par {person} ({birds})',
  '{person} called {birds}': 'selon {person}, {birds}',
  '{birds} {taxon} that {other} called {otherTaxon}':
    '{birds} comme {taxon} ({otherTaxon} selon {other})',
  "Settle {taxa} together with this group, to name the flock's birds":
    'Régler ce groupe avec {taxa}, pour nommer les oiseaux de la bande',
  "Take {person}'s names for this flock: {lines}":
    'Retenir pour cette bande les noms donnés par {person} : {lines}',
  'Name the birds flock by flock: {lines}': 'Nommer les oiseaux bande par bande : {lines}',
  "Take {observer}'s identification: {taxa}":
    'Retenir l’identification faite par {observer} : {taxa}',
  '{where} {observer} called {birds}.': '{where}, selon {observer} : {birds}.',
  '{where} {observer} called {birds}, no more than counting error explains.':
    '{where}, selon {observer} : {birds}, pas plus que n’explique l’erreur de dénombrement.',
  '{where} {observer} called {birds}; flock by flock their names agree within counting error.':
    '{where}, selon {observer} : {birds} ; bande par bande, les noms concordent dans les limites de l’erreur de dénombrement.',
  '{a} counted {aOne} male and {aOther} female {taxa} {where} and {b} {bOne} and {bOther}: {birds} sexed differently, more than chance and counting error explain.':
    'Mâles et femelles comptés {where} ({taxa}) : {aOne} et {aOther} par {a}, {bOne} et {bOther} par {b} ; {birds} de sexe noté différemment, plus que n’expliquent le hasard et l’erreur de dénombrement.',
  '{a} counted {aOne} adult and {aOther} immature {taxa} {where} and {b} {bOne} and {bOther}: {birds} aged differently, more than chance and counting error explain.':
    'Adultes et immatures comptés {where} ({taxa}) : {aOne} et {aOther} par {a}, {bOne} et {bOther} par {b} ; {birds} d’âge noté différemment, plus que n’expliquent le hasard et l’erreur de dénombrement.',
  "{observer}'s {birds} {where}": '{birds} {where}, selon {observer}',
  'Of {whose} the marks noted ({marks}) contradict one another: no {group} has them all':
    '{whose} : les critères notés ({marks}) se contredisent, aucun candidat ({group}) ne les réunit tous',
  'Of {whose} the marks noted ({marks}) fit {taxon} instead':
    '{whose} : les critères notés ({marks}) désignent plutôt {taxon}',
  'Of {whose} the marks noted ({marks}) fit {taxon} as well':
    '{whose} : les critères notés ({marks}) conviennent aussi à {taxon}',
  '{finding}.': '{finding}.',
  '{finding} ({names} is too undependable to decide).':
    '{finding} (critère trop peu sûr pour trancher : {names}).',
  '{finding} ({names} are too undependable to decide).':
    '{finding} (critères trop peu sûrs pour trancher : {names}).',
  '{mark}: {state}': '{mark} : {state}',
  'Read the line as {taxon}, which the marks fit':
    'Lire la ligne comme {taxon}, ce que les critères autorisent',
  'Read the line as {taxon}, which leaves it open':
    'Lire la ligne comme {taxon}, ce qui laisse la question ouverte',
  'Keep {taxon}: something beside these marks shows it':
    'Garder {taxon} : autre chose que ces critères le montre',
  'Leave the line out': 'Écarter la ligne',
  'Let the number stand: it was checked': 'Maintenir le nombre : il a été vérifié',
  '{years} earlier years ({first} to {last})': '{years} années antérieures (de {first} à {last})',
  'the {low} to {high} that {since} lead one to expect':
    'les {low} à {high} que laissent attendre {since}',
  '{birds} is compiled; none was recorded in {since}.':
    '{birds} au dénombrement compilé ; taxon jamais noté en {since}.',
  '{birds} are compiled; none was recorded in {since}.':
    '{birds} au dénombrement compilé ; taxon jamais noté en {since}.',
  '{birds} is compiled, more than {expected}.':
    '{birds} au dénombrement compilé, plus que {expected}.',
  '{birds} are compiled, more than {expected}.':
    '{birds} au dénombrement compilé, plus que {expected}.',
  '{birds}, pairs and groups that may be so among them,':
    '{birds} (paires et groupes possibles compris)',
  '{birds} is compiled, fewer than {expected}.':
    '{birds} au dénombrement compilé, moins que {expected}.',
  '{birds} are compiled, fewer than {expected}.':
    '{birds} au dénombrement compilé, moins que {expected}.',
  '{place} has no second count: its {birds} stand as {observers} tallied them.':
    '{place} : pas de second dénombrement ; le relevé fait par {observers} ({birds}) est repris tel quel.',
  'Nobody saw all of {place}: its {birds} are a lower bound from {observers}.':
    '{place} : personne n’a tout vu ; ce qu’ont relevé {observers} ({birds}) est une borne inférieure.',
  'Nobody counted {place} in window {window}: its birds are missing from the compiled count.':
    '{place} : personne n’y a dénombré dans le créneau {window} ; ses oiseaux manquent au dénombrement compilé.',
  '{number} by {observers} ({hours})': '{number} par {observers} ({hours})',
  '{place} was counted at different times: {counts}. They are successive counts, so they are not compared; the higher one is compiled.':
    '{place} : dénombrements faits à des heures différentes, {counts}. Ils sont successifs et ne sont donc pas comparés ; le plus élevé est compilé.',
  "Leave out {observer}'s tally ({hours})": 'Écarter le relevé fait par {observer} ({hours})',
  '{start} to {end}': 'de {start} à {end}',
  'over 99': 'plus de 99',
  '{first} and {second} may be one flock seen from both sides ({chance} in 100).':
    '{first} et {second} : peut-être une seule bande, vue des deux côtés ({chance} chances sur 100).',
  '{first} and {second} may be one flock that moved ({chance} in 100).':
    '{first} et {second} : peut-être une seule bande, qui s’est déplacée ({chance} chances sur 100).',
  'One flock: take {birds} off {place}': 'Une seule bande : retirer {birds} du secteur {place}',
  'Two flocks: both stand': 'Deux bandes : les deux sont maintenues',
  '{one} has at least {least} {names}, but {other} has none':
    'au moins {least} {names} selon {one}, mais 0 selon {other}',
  '{one} has at least {least} {names}, but {other} leaves room for at most {most}':
    'au moins {least} {names} selon {one}, mais au plus {most} selon {other}',
  'Even within counting error {numbers}.':
    'Même en admettant l’erreur de dénombrement : {numbers}.',
  '{numbers}.': 'D’après les relevés : {numbers}.',
  "{one}'s {stated} {names} cannot all be right if {other}'s {instead} are":
    '{stated} {names} ({one}) et {instead} ({other}) ne peuvent être tous exacts',
  '{against}: even within counting error {numbers}.':
    '{against} : même en admettant l’erreur de dénombrement, {numbers}.',
  '{against}: {numbers}.': '{against} : {numbers}.',
  'Any {fewer} of {observers} fit one truth, but not all {all} together':
    '{observers} : pris {fewer} à {fewer}, leurs relevés peuvent être vrais ensemble, mais pas tous les {all}',
  '{opening}.': '{opening}.',
  '{observer} has at least {number} {names}': 'au moins {number} {names} selon {observer}',
  '{observer} has no {taxon}': '0 {taxon} selon {observer}',
  '{observer} has at most {number} {taxon}': 'au plus {number} {taxon} selon {observer}',
  '{opening}, even within counting error: {needs}, but {rooms}.':
    '{opening}, même en admettant l’erreur de dénombrement ; {needs}, mais {rooms}.',
  '{opening}: {needs}, but {rooms}.': '{opening} ; {needs}, mais {rooms}.',
  '{number} more': '{number} de plus',
  one: 'un',
  two: 'deux',
  three: 'trois',
  four: 'quatre',
  five: 'cinq',
  six: 'six',
};
