/** What speaks for and against two sightings being one flock. */
export const FRENCH_LINKS: Readonly<Record<string, string>> = {
  'movements are rarer in this count than expected beforehand':
    'les déplacements sont plus rares dans ce dénombrement que prévu au départ',
  'movements are more frequent in this count than expected beforehand':
    'les déplacements sont plus fréquents dans ce dénombrement que prévu au départ',
  'flocks in both tallies of {one} and {other} are rarer than expected beforehand':
    'les bandes figurant dans les relevés des deux secteurs {one} et {other} sont plus rares que prévu au départ',
  'flocks in both tallies of {one} and {other} are more frequent than expected beforehand':
    'les bandes figurant dans les relevés des deux secteurs {one} et {other} sont plus fréquentes que prévu au départ',
  'it is the only flock that was followed in {place}':
    'c’est la seule bande suivie dans le secteur {place}',
  'it is one of {number} flocks in {place}': 'c’est l’une des {number} bandes du secteur {place}',
  'it is one of about {number} flocks in {place}':
    'c’est l’une des bandes du secteur {place} (environ {number})',
  '{number} such birds were seen flying from {place} to {other}':
    '{number} oiseaux semblables ont été vus en vol, du secteur {place} vers le secteur {other}',
  'first seen by {saw} of {all} observers of the section':
    'vue d’abord par {saw} des {all} observateurs du secteur',
  'later seen by {saw} of {all} observers of the section':
    'vue ensuite par {saw} des {all} observateurs du secteur',
  'first seen by all {all} observers of the section':
    'vue d’abord par les {all} observateurs du secteur',
  'later seen by all {all} observers of the section':
    'vue ensuite par les {all} observateurs du secteur',
  '{number}°': '{number}°',
  'first seen heading {degrees}': 'vue d’abord au cap {degrees}',
  'later seen heading {degrees}': 'vue ensuite au cap {degrees}',
  '{seen}, which fits the way': '{seen}, ce qui va avec le trajet',
  '{seen}, which does not fit the way': '{seen}, ce qui ne va pas avec le trajet',
  '{fitting} ({way}°)': '{fitting} ({way}°)',
  'reported as going to {places}': 'destination signalée : {places}',
  'reported as coming from {places}': 'provenance signalée : {places}',
  '{length} km': '{length} km',
  'about {least} to {most} km': 'environ {least} à {most} km',
  '{length} apart, position and time not noted: a flock could get there':
    '{length} d’écart, position et heure non notées : une bande pouvait s’y rendre',
  '{length} apart, position not noted: a flock could get there':
    '{length} d’écart, position non notée : une bande pouvait s’y rendre',
  '{length} apart, time not noted: a flock could get there':
    '{length} d’écart, heure non notée : une bande pouvait s’y rendre',
  '{length} apart at the same time': '{length} d’écart au même moment',
  'which a swimming flock covers': 'ce qu’une bande parcourt à la nage',
  'too far to swim, but it may have flown and rested':
    'trop loin à la nage, mais elle peut avoir volé et s’être reposée',
  'in flight without a rest': 'en vol, sans repos',
  '{length} in {minutes} minutes ({speed} km/h), {means}':
    '{length} en {minutes} min ({speed} km/h), {means}',
  'the same observer counted both and did not say that it was one flock':
    'le même observateur a compté les deux et n’a pas dit que c’était une seule bande',
  'both {one}; {share} in 100 flocks would fit as well':
    '{one} dans les deux ; {share} % des bandes conviendraient aussi bien',
  '{one} and {other} can be the same birds; {share} in 100 flocks would fit as well':
    '{one} et {other} peuvent être les mêmes oiseaux ; {share} % des bandes conviendraient aussi bien',
  'its kinds are mixed alike': 'ses taxons sont mêlés dans les mêmes proportions',
  'its kinds are not mixed alike': 'ses taxons ne sont pas mêlés dans les mêmes proportions',
  'as many males in both': 'autant de mâles dans les deux',
  'not as many males in both': 'pas autant de mâles dans les deux',
  '{numbers} birds: the one is all of its section, the other may be a flock of these':
    '{numbers} oiseaux : l’un est le total de son secteur, l’autre peut en être une bande',
  '{numbers} birds: the smaller may be a part of the larger':
    '{numbers} oiseaux : la plus petite peut être une partie de la plus grande',
  '{numbers} birds: alike within counting error':
    '{numbers} oiseaux : nombres semblables, à l’erreur de dénombrement près',
  '{numbers} birds: not much alike': '{numbers} oiseaux : nombres peu semblables',
  'seen on its way, so hardly at rest': 'vue en chemin, donc guère au repos',
  'the sections have {number} flocks on average':
    'nombre moyen de bandes dans les secteurs : {number}',
  'position not noted: it may have lain where {one} meets {two} and be in both tallies':
    'position non notée : elle pouvait se trouver là où {one} et {two} se touchent, et figurer dans les deux relevés',
  '{length} apart, within the error of both positions: one flock that stayed and is in both tallies':
    '{length} d’écart, dans les limites de l’erreur des deux positions : une bande restée sur place, qui figure dans les deux relevés',
  '{length} apart, further than positions err: one flock that stayed and is in both tallies':
    '{length} d’écart, plus que l’erreur des positions : une bande restée sur place, qui figure dans les deux relevés',
};
