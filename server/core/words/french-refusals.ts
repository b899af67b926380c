/** What the server refuses, and what only its files and services find wrong. */
export const FRENCH_REFUSALS: Readonly<Record<string, string>> = {
  'Something went wrong in the server, and nothing was changed. Try again; if it happens again, tell whoever runs the server.':
    'Une erreur s’est produite dans le serveur, et rien n’a été changé. Réessayez ; si cela se répète, dites-le à qui gère le serveur.',
  'Nothing was taken in: 1 thing needs mending.':
    'Rien n’a été enregistré : 1 chose est à corriger.',
  'Nothing was taken in: {number} things need mending.':
    'Rien n’a été enregistré : {number} choses sont à corriger.',
  'Ruling {id} accepts observer "{observer}", who has no tally of {cell}. Those who have: {observers}.':
    'La décision {id} retient l’observateur « {observer} », qui n’a pas de relevé de {cell}. Ceux qui en ont : {observers}.',
  'Ruling {id} decides "{kind}", which does not fit {target}. A group takes let-stand, accept-observer, take-rule, set-numbers or identify-as.':
    'La décision {id} dit « {kind} », ce qui ne convient pas à {target}. Pour un groupe : let-stand, accept-observer, take-rule, set-numbers ou identify-as.',
  'Ruling {id} decides "{kind}", which does not fit {target}. A tally can be excluded; a line can be excluded or identified otherwise (identify-line).':
    'La décision {id} dit « {kind} », ce qui ne convient pas à {target}. Un relevé peut être écarté ; une ligne peut être écartée ou identifiée autrement (identify-line).',
  'Rulings {id} (by {by}: {kind}) and {laterId} (by {laterBy}: {laterKind}) are both about {target}. Withdraw one of them, or let the later one take the place of the earlier.':
    'Les décisions {id} (de {by} : {kind}) et {laterId} (de {laterBy} : {laterKind}) portent toutes deux sur {target}. Retirez l’une d’elles, ou faites prendre à la plus récente la place de la plus ancienne.',
  '{group} in {cell}': '{group} dans {cell}',
  'the link {link}': 'le lien {link}',
  'tally {tally}': 'le relevé {tally}',
  'tally line {line}': 'la ligne de relevé {line}',
  "Ruling {id} takes {target} apart, but its parts are not the group's taxa, each once in two parts or more. They are: {taxa}.":
    'La décision {id} divise {target}, mais ses parties ne sont pas les taxons du groupe, chacun une fois en deux parties ou plus. Ce sont : {taxa}.',
  'Ruling {id} decides "{kind}", which does not fit {target}. A link takes confirm-link or reject-link.':
    'La décision {id} dit « {kind} », ce qui ne convient pas à {target}. Pour un lien : confirm-link ou reject-link.',
  'an object with total, sections and links': 'un objet avec total, sections et links',
  'whole birds by scientific name': 'des oiseaux entiers par nom scientifique',
  '{species} is not a known species': '{species} n’est pas une espèce connue',
  'the scientific name of a species': 'le nom scientifique d’une espèce',
  'whole birds by {what} and scientific name':
    'des oiseaux entiers, pour {what}, par nom scientifique',
  '{place} is no {what} of this count': '{place} n’est pas {what} de ce dénombrement',
  'a {what} id': 'l’identifiant d’{what}',
  'a list of known errors': 'une liste d’erreurs connues',
  'kind of error': 'un genre d’erreur',
  'a list of links': 'une liste de liens',
  'it names {number} lines': 'nombre de lignes nommées : {number}',
  'two tally lines': 'deux lignes de relevé',
  'kind of link': 'un genre de lien',
  'a list of true flocks': 'une liste des bandes réelles',
  'a list of species with birds and lines': 'une liste d’espèces avec oiseaux et lignes',
  'true or false': 'true ou false',
  'a list of tally line ids': 'une liste d’identifiants de lignes de relevé',
  '{id} is no tally line of this count': '{id} n’est pas une ligne de relevé de ce dénombrement',
  'ids of tally lines': 'des identifiants de lignes de relevé',
  'the file is there twice': 'le fichier est là deux fois',
  'each file once': 'chaque fichier une seule fois',
  'a count folder with count.json, places.geojson and tallies.csv':
    'un dossier de dénombrement avec count.json, places.geojson et tallies.csv',
  'the file is missing': 'le fichier manque',
  'tallies.csv is there too, and only one of them can be right':
    'tallies.csv est là aussi, et un seul des deux peut être le bon',
  'one of the two': 'l’un des deux',
  'tallies.csv, or tallies.xlsx with the same columns':
    'tallies.csv, ou tallies.xlsx avec les mêmes colonnes',
  'the file is not UTF-8 text': 'le fichier n’est pas du texte UTF-8',
  'UTF-8, which a spreadsheet offers as "CSV UTF-8" when it saves':
    'UTF-8, qu’un tableur propose comme « CSV UTF-8 » à l’enregistrement',
  'columns {columns}': 'les colonnes {columns}',
  'a quotation mark is out of place near line {line} of the file':
    'un guillemet est mal placé vers la ligne {line} du fichier',
  'a quotation mark is out of place of the file': 'un guillemet du fichier est mal placé',
  'fields with quotation marks, commas or line breaks in "quotes", and a quotation mark inside them doubled':
    'les champs avec guillemets, virgules ou retours à la ligne entre "guillemets", et un guillemet à l’intérieur doublé',
  'JSON: names and texts in double quotes, a comma between entries and none after the last':
    'du JSON : noms et textes entre guillemets doubles, une virgule entre les entrées et aucune après la dernière',
  'the file is not JSON: it is empty': 'le fichier n’est pas du JSON : il est vide',
  'the file is not JSON: it ends too early': 'le fichier n’est pas du JSON : il finit trop tôt',
  'the file is not JSON: it goes wrong at line {line}, character {character}':
    'le fichier n’est pas du JSON : l’erreur est à la ligne {line}, caractère {character}',
  'the spreadsheet has no sheet': 'le classeur n’a pas de feuille',
  'a sheet "tallies"': 'une feuille « tallies »',
  'a spreadsheet saved as .xlsx, or tallies.csv instead':
    'un classeur enregistré en .xlsx, ou tallies.csv à la place',
  'the file is not a readable .xlsx spreadsheet': 'le fichier n’est pas un classeur .xlsx lisible',
  'the first row is empty': 'la première rangée est vide',
  'a header row': 'une rangée d’en-tête',
  'the row has {fields} fields, the header has {header}':
    'la rangée a {fields} champs, l’en-tête en a {header}',
  '{header} fields; an empty one still needs its separator':
    '{header} champs ; même vide, un champ a besoin de son séparateur',
  'field {unnamed} holds "{record}" but has no column name':
    'le champ {unnamed} contient « {record} » mais n’a pas de nom de colonne',
  'a name in the header for every column that is used':
    'un nom dans l’en-tête pour chaque colonne utilisée',
  'the password has {number} characters': 'nombre de caractères du mot de passe : {number}',
  '{shortest} to {longest}; a few unrelated words do well':
    'de {shortest} à {longest} ; quelques mots sans rapport entre eux conviennent bien',
  'Name and password do not belong together. Use the name as your leader wrote it; observers sign in by their invite link.':
    'Le nom et le mot de passe ne vont pas ensemble. Écrivez le nom comme votre chef d’équipe l’a écrit ; les observateurs se connectent par leur lien d’invitation.',
  'This invite link no longer works: it has run out, or a newer one was made for you. Ask your leader for a new link.':
    'Ce lien d’invitation ne fonctionne plus : il a expiré, ou un plus récent a été créé pour vous. Demandez un nouveau lien à votre chef d’équipe.',
  'Nobody with the id {personId} takes part in this count.':
    'Personne ayant l’identifiant {personId} ne participe à ce dénombrement.',
  '{name} has a password and signs in with it. A forgotten password is renewed where the server runs.':
    '{name} a un mot de passe et se connecte avec. Un mot de passe oublié se renouvelle là où tourne le serveur.',
  'The current password is not right.': 'Le mot de passe actuel n’est pas le bon.',
  'You take part in counts that this invite link does not open. Open the link of each of them first, then set a password.':
    'Vous participez à des dénombrements que ce lien d’invitation n’ouvre pas. Ouvrez d’abord le lien de chacun d’eux, puis choisissez un mot de passe.',
  'Someone else already signs in as "{name}". Ask your leader to write your name in a way that tells you apart.':
    'Quelqu’un d’autre se connecte déjà sous le nom « {name} ». Demandez à votre chef d’équipe d’écrire votre nom d’une façon qui vous distingue.',
  'Too many sign-ins have failed. Wait 15 minutes and try again.':
    'Trop de connexions ont échoué. Attendez 15 minutes et réessayez.',
  'Nobody is signed in. Open your invite link again, or sign in with your name and password.':
    'Personne n’est connecté. Rouvrez votre lien d’invitation, ou connectez-vous avec votre nom et votre mot de passe.',
  'There is another assignment with the id {id}. Give this one a new id.':
    'Il y a une autre affectation avec l’identifiant {id}. Donnez à celle-ci un nouvel identifiant.',
  'There is no assignment {assignmentId}.': 'Il n’y a pas d’affectation {assignmentId}.',
  'Tally {id} was submitted for this assignment, so it stays. A compiler can leave the tally out by a ruling.':
    'Le relevé {id} a été envoyé pour cette affectation, elle reste donc. Un compilateur peut écarter le relevé par une décision.',
  'Window {window} is closed, so who counts in it is settled.':
    'Le créneau {window} est fermé : qui y compte est donc fixé.',
  'an observer of this count': 'un observateur de ce dénombrement',
  'a window of this count': 'un créneau de ce dénombrement',
  'a section of this count': 'un secteur de ce dénombrement',
  'one section of this count at least': 'au moins un secteur de ce dénombrement',
  'a vantage point of this count': 'un point d’observation de ce dénombrement',
  '"{value}" is not the id of {expected}': '« {value} » n’est pas l’identifiant d’{expected}',
  '{expected}: {known}': '{expected} : {known}',
  'You take part in no count with the id {countId}.':
    'Vous ne participez à aucun dénombrement d’identifiant {countId}.',
  'its windows are still open; the leader closes them when all have submitted':
    'ses créneaux sont encore ouverts ; le chef d’équipe les ferme quand tout le monde a envoyé son relevé',
  'its windows are closed and it is under review':
    'ses créneaux sont fermés et il est en cours d’examen',
  'it is signed': 'il est signé',
  'it is sealed and can only be read': 'il est scellé et ne peut plus qu’être lu',
  'change the plan of this count': 'changer le plan de ce dénombrement',
  'make invite links for this count': 'créer des liens d’invitation pour ce dénombrement',
  'close a window of this count': 'fermer un créneau de ce dénombrement',
  'print field sheets of this count': 'imprimer des fiches de terrain de ce dénombrement',
  'submit a tally to this count': 'envoyer un relevé à ce dénombrement',
  'see the coverage of this count': 'voir la couverture de ce dénombrement',
  "see other people's tallies of this count": 'voir les relevés des autres pour ce dénombrement',
  'see the review of this count': 'voir l’examen de ce dénombrement',
  'see how you agree with others on this count':
    'voir votre concordance avec les autres pour ce dénombrement',
  'give or withdraw rulings on this count': 'prendre ou retirer des décisions sur ce dénombrement',
  'second rulings on this count': 'appuyer des décisions sur ce dénombrement',
  'put queries to observers of this count':
    'poser des questions aux observateurs de ce dénombrement',
  'answer queries of this count': 'répondre aux questions de ce dénombrement',
  'sign off this count': 'signer ce dénombrement',
  'seal this count': 'sceller ce dénombrement',
  'see the compiled count': 'voir le dénombrement compilé',
  'see the audit trail of this count': 'voir le journal de ce dénombrement',
  leader: 'chef d’équipe',
  observer: 'observateur',
  compiler: 'compilateur',
  'You may not {act}: you take part as {roles}.':
    'Vous ne pouvez pas {act} : vous participez comme {roles}.',
  'You may not {act} now: {state}.': 'Vous ne pouvez pas {act} maintenant : {state}.',
  'the protocol is not JSON': 'le protocole n’est pas du JSON',
  'a JSON object with protocol settings, or nothing':
    'un objet JSON avec les réglages du protocole, ou rien',
  'Counts are planned and imported by leaders who signed in with their password.':
    'Les dénombrements sont planifiés et importés par des chefs d’équipe connectés avec leur mot de passe.',
  'This count has no window {windowId}; its windows are {ids}.':
    'Ce dénombrement n’a pas de créneau {windowId} ; ses créneaux sont {ids}.',
  'There is a count with the id {id} already. Give this one another id.':
    'Il y a déjà un dénombrement d’identifiant {id}. Donnez à celui-ci un autre identifiant.',
  'the person id "{id}" ({name}) already belongs to someone of another name':
    'l’identifiant de personne « {id} » ({name}) appartient déjà à quelqu’un d’un autre nom',
  'person ids that are unique over all counts of the programme':
    'des identifiants de personnes uniques dans tous les dénombrements du programme',
  'There is no cell {id} in this review.': 'Il n’y a pas de cellule {id} dans cet examen.',
  'Window {id} is still open: the leader closes it.':
    'Le créneau {id} est encore ouvert : le chef d’équipe le ferme.',
  'No ruling settles a serious disagreement: {text}':
    'Aucune décision ne règle un désaccord grave : {text}',
  'Ruling {id} is not applied: {text}. Take it back, or rule again in its place.':
    'La décision {id} n’est pas appliquée : {text}. Retirez-la, ou décidez de nouveau à sa place.',
  'The ruling of {name} is not applied: {text}. Take it back, or rule again in its place.':
    'La décision de {name} n’est pas appliquée : {text}. Retirez-la, ou décidez de nouveau à sa place.',
  'The ruling of {name} on {target} waits for a second person.':
    'La décision de {name} sur {target} attend une seconde personne.',
  '{asked} has not answered a query of {asker}.':
    '{asked} n’a pas répondu à une question de {asker}.',
  'This query is answered already, and answers stay as they were given. Tell the compiler, who can ask again.':
    'Cette question a déjà sa réponse, et les réponses restent comme elles ont été données. Dites-le au compilateur, qui peut poser une nouvelle question.',
  'No query {queryId} was put to you.': 'Aucune question {queryId} ne vous a été posée.',
  'Another query was already asked under the id {id}. Give this one a new id.':
    'Une autre question a déjà été posée sous l’identifiant {id}. Donnez à celle-ci un nouvel identifiant.',
  'Nobody with the id {to} takes part in this count.':
    'Personne ayant l’identifiant {to} ne participe à ce dénombrement.',
  'There is no disagreement {disagreementId} in this review any more. Load the review again.':
    'Il n’y a plus de désaccord {disagreementId} dans cet examen. Rechargez l’examen.',
  '{name} still has to submit a tally here. Ask once it is in, so that the question gives nothing away.':
    '{name} doit encore envoyer un relevé ici. Posez la question une fois qu’il est arrivé, pour qu’elle ne révèle rien.',
  '{name} has no tally here to be asked about. Ask one of the observers of the disagreement.':
    '{name} n’a pas ici de relevé sur lequel porter une question. Adressez-vous à l’un des observateurs du désaccord.',
  'the question is empty': 'la question est vide',
  'the answer is empty': 'la réponse est vide',
  'a sentence or two': 'une phrase ou deux',
  'the id of the observer whose numbers are taken':
    'l’identifiant de l’observateur dont les nombres sont retenus',
  'not a rule': 'ce n’est pas une règle',
  'the taxa of the group that it is settled together with':
    'les taxons du groupe avec lequel il est réglé',
  'two parts or more, each a list of taxa of the group':
    'deux parties ou plus, chacune une liste de taxons du groupe',
  '"{kind}" is no decision on a {what}': '« {kind} » n’est pas une décision sur {what}',
  'one line at least: a taxon and its whole number of birds':
    'au moins une ligne : un taxon et son nombre entier d’oiseaux',
  '{number} is not a number of birds': '{number} n’est pas un nombre d’oiseaux',
  '"{taxon}" stands in an earlier line too': '« {taxon} » figure aussi sur une ligne précédente',
  'each taxon once': 'chaque taxon une seule fois',
  'is missing': 'manque',
  'There is no disagreement {id} in this review any more: the tallies have changed, or you still owe a tally there.':
    'Il n’y a plus de désaccord {id} dans cet examen : les relevés ont changé, ou vous y devez encore un relevé.',
  'A ruling needs a disagreement or a target of its own.':
    'Une décision a besoin d’un désaccord ou d’un objet propre.',
  'The disagreement {id} is about a whole cell. Say which group, tally or line the ruling is about.':
    'Le désaccord {id} porte sur toute une cellule. Dites sur quel groupe, relevé ou ligne porte la décision.',
  'The target of a ruling is a group with its cell, or a link, a tally or a line; kind says which of them.':
    'L’objet d’une décision est un groupe avec sa cellule, ou un lien, un relevé ou une ligne ; kind dit lequel.',
  'There is nothing like {target} in this review. Load the review again: a tally may have changed.':
    'Il n’y a rien de tel dans cet examen : {target}. Rechargez l’examen, un relevé a pu changer.',
  'A ruling is seconded by somebody else than its author. Ask another compiler or the leader.':
    'Une décision est appuyée par quelqu’un d’autre que son auteur. Demandez à un autre compilateur ou au chef d’équipe.',
  'Ruling {rulingId} needs no second, or has one already.':
    'La décision {rulingId} n’a pas besoin d’appui, ou en a déjà un.',
  'Only its author takes a ruling back. Give one that takes its place instead.':
    'Seul son auteur retire une décision. Prenez-en plutôt une qui la remplace.',
  'Another ruling was already given under the id {id}. Give this one a new id.':
    'Une autre décision a déjà été prise sous l’identifiant {id}. Donnez à celle-ci un nouvel identifiant.',
  'The count has changed since you opened this page: a tally or a ruling came in. Look at it again before you rule.':
    'Le dénombrement a changé depuis que vous avez ouvert cette page : un relevé ou une décision est arrivé. Regardez-le de nouveau avant de décider.',
  'Ruling {replaces}, whose place this one would take, is not in force on {target}.':
    'La décision {replaces}, que celle-ci remplacerait, n’est pas en vigueur sur {target}.',
  'Ruling {id} (by {by}: {kind}) and ruling {laterId} (by {laterBy}: {laterKind}) are both about {target}. Withdraw one of them, or let the later one take the place of the earlier.':
    'La décision {id} (de {by} : {kind}) et la décision {laterId} (de {laterBy} : {laterKind}) portent toutes deux sur {target}. Retirez l’une d’elles, ou faites prendre à la plus récente la place de la plus ancienne.',
  'The ruling would have no effect: {text}. Load the review again.':
    'La décision n’aurait aucun effet : {text}. Rechargez l’examen.',
  'nothing is there for it to settle': 'il n’y a rien à régler',
  'Ruling {id} was taken back or replaced already.':
    'La décision {id} a déjà été retirée ou remplacée.',
  'no reason is given': 'aucune raison n’est donnée',
  'a few words on why, for whoever traces the number later':
    'quelques mots sur le pourquoi, pour qui retracera le nombre plus tard',
  'There is no ruling {rulingId} that you may see.':
    'Il n’y a pas de décision {rulingId} que vous puissiez voir.',
  'The count has changed since you read it: a tally or a ruling came in. Read it again, then sign.':
    'Le dénombrement a changé depuis que vous l’avez lu : un relevé ou une décision est arrivé. Relisez-le, puis signez.',
  'The count cannot be signed off yet:': 'Le dénombrement ne peut pas encore être signé :',
  'You cannot sign off as {as}: you take part as {roles}.':
    'Vous ne pouvez pas signer comme {as} : vous participez comme {roles}.',
  'The count cannot be sealed yet:': 'Le dénombrement ne peut pas encore être scellé :',
  'There is no assignment {assignmentId} whose field sheet is yours to print. Go back to your assignments and take the link from there.':
    'Il n’y a pas d’affectation {assignmentId} dont vous puissiez imprimer la fiche de terrain. Revenez à vos affectations et prenez le lien de là.',
  'There is no field sheet in the language "{language}". Expected {known}.':
    'Il n’y a pas de fiche de terrain dans la langue « {language} ». Attendu : {known}.',
  'There is no field sheet for paper "{paper}". Expected {known}.':
    'Il n’y a pas de fiche de terrain pour le papier « {paper} ». Attendu : {known}.',
  'a reason is given, but no tally that this one corrects':
    'une raison est donnée, mais aucun relevé que celui-ci corrige',
  'no reason, or the corrected tally in "replaces"':
    'aucune raison, ou le relevé corrigé dans « replaces »',
  'the correction of tally {replaces} gives no reason':
    'la correction du relevé {replaces} ne donne pas de raison',
  'a few words on what was wrong': 'quelques mots sur ce qui n’allait pas',
  'Tally {replaces} was corrected already. Correct its newest version, {id}, instead.':
    'Le relevé {replaces} a déjà été corrigé. Corrigez plutôt sa version la plus récente, {id}.',
  'You have submitted no tally {replaces} to this count, so there is none to correct.':
    'Vous n’avez envoyé aucun relevé {replaces} à ce dénombrement, il n’y en a donc pas à corriger.',
  'Window {window} is closed and takes no more tallies. Tell the compiler what should be different: a compiler can still rule on it.':
    'Le créneau {window} est fermé et n’accepte plus de relevés. Dites au compilateur ce qui devrait être différent : un compilateur peut encore en décider.',
  '{sections} in {window}': '{sections} pendant {window}',
  'You are not assigned to {sections} in window {window}. You have no assignment in this count. Ask your leader to assign you.':
    'Vous n’êtes pas affecté à {sections} pour le créneau {window}. Vous n’avez aucune affectation dans ce dénombrement. Demandez à votre chef d’équipe de vous affecter.',
  'You are not assigned to {sections} in window {window}. Your assignments are {yours}. Ask your leader to assign you.':
    'Vous n’êtes pas affecté à {sections} pour le créneau {window}. Vos affectations sont {yours}. Demandez à votre chef d’équipe de vous affecter.',
  'You have already submitted tally {id} of {sections} in window {window}. To change it, submit a correction that names it in "replaces" and says why.':
    'Vous avez déjà envoyé le relevé {id} de {sections} pour le créneau {window}. Pour le changer, envoyez une correction qui le nomme dans « replaces » et qui dit pourquoi.',
  '"{id}" is the id of a line in another tally':
    '« {id} » est l’identifiant d’une ligne d’un autre relevé',
  'The tally {id} is not the only one of that id: say which count you mean.':
    'Le relevé {id} n’est pas le seul de cet identifiant : dites de quel dénombrement il s’agit.',
  "There is no tally {id} that you may see. Another's tally of a cell can be seen once your own of it is submitted, or its window is closed.":
    'Il n’y a pas de relevé {id} que vous puissiez voir. Le relevé d’une cellule fait par quelqu’un d’autre se voit une fois que le vôtre est envoyé, ou que son créneau est fermé.',
  'This tally is not {name}’s, who is signed in now. Sign in as its observer to send it.':
    'Ce relevé n’est pas celui de {name}, connecté en ce moment. Connectez-vous comme son observateur pour l’envoyer.',
  'Another tally was already submitted under the id {id}. Submit this one under a new id; to correct the earlier one, name it in "replaces" and say why.':
    'Un autre relevé a déjà été envoyé sous l’identifiant {id}. Envoyez celui-ci sous un nouvel identifiant ; pour corriger le précédent, nommez-le dans « replaces » et dites pourquoi.',
};
