import type { CautionWords } from './cautionWords.ts';

/** The cautions in German; sources of figures are in the English ones. */
export const cautionsDe: CautionWords = {
  heading: 'Bevor Sie beginnen',
  intro:
    'Diese Seiten ersetzen weder die Anleitung einer Maschine oder eines Geräts noch die Regeln Ihrer Werkstatt, örtliche Vorschriften oder das Recht Ihres Landes, und keine Arbeit, die eine Zulassung verlangt: diese gehen vor. Widerspricht eine Seite einer Anleitung, halten Sie an und fragen Sie.',
  broughtBy: (units) => `Hier: ${units.join(', ')}.`,
  guided: {
    fence: [
      'Spaltkeil am Platz. Hände: Bei weniger als 150 mm zwischen Anschlag und Blatt und auf den letzten 300 mm jedes Schnitts den Schiebestock nehmen; solche Schnitte sind in den Schritten bezeichnet. Unter 50 mm ein Schiebeholz.',
    ],
    rail: [
      'Bei einer Handkreissäge auf der Schiene sagen die Maße, wo die Schiene liegt. Schiene und Platte festspannen, die Platte auf beiden Seiten des Schnitts auflegen, damit nichts das Blatt klemmt, Hände und Kabel fernhalten, und die Säge erst ablegen, wenn das Blatt steht.',
      'Ein Stück, das schmaler ist als die Schiene, trägt sie nicht: die Schiene mit gleich dicker Platte unterlegen; solche Schnitte sind in den Schritten bezeichnet. Nichts sägen, das sich nicht festspannen lässt.',
    ],
  },
  texts: {
    saw: {
      title: 'Säge',
      points: [
        'Wissen, wo der Not-Halt ist, bevor sie läuft. Haube am Platz, Blatt scharf und für beschichtete Platten geeignet, nichts Loses an Kleidung und Haar. Die Anleitung der Maschine geht vor.',
        'Nie über das Blatt greifen; Reste nur mit einem Stock oder bei stehendem Blatt wegräumen.',
        'Eine Platte ist schwer und hat scharfe Kanten: zu zweit tragen, mit Handschuhen; an der Säge die Handschuhe ausziehen.',
        'Vor dem ersten Schnitt Schnittfuge und erste Platte messen: Die Maße der Schnitte gelten für die Schnittfuge, die auf dem Schnittplan steht.',
      ],
    },
    dust: {
      title: 'Staub',
      points: [
        'Holz- und Plattenstaub schadet der Lunge und kann brennen: bei jedem Schnitt absaugen, und eine Maske tragen, wo die Absaugung nicht alles fasst. Wie viel Staub erlaubt ist und welche Maske, sagen örtliche Vorschriften und das Datenblatt der Platte.',
      ],
    },
    edges: {
      title: 'Scharfe Kanten',
      points: [
        'Geschnittenes und bündig gefrästes Kantenband ist scharf. Jede Kante und Ecke brechen, an die Hand, Knie oder Kopf kommen.',
      ],
    },
    fixing: {
      title: 'Befestigung am Aufbau',
      points: [
        'Möbel müssen einer Vollbremsung standhalten: jedes Möbel so am Aufbau befestigen, wie es Fahrzeughersteller und Umbauer vorgeben. Verkleidung allein hält keine Schraube.',
        'Vor dem Bohren feststellen, was dahinter liegt: Kabel, Leitungen, Tank, Airbags.',
      ],
    },
    latches: {
      title: 'Verschlüsse und Ecken',
      points: [
        'Türen, Klappen und Schubkästen mit Verschlüssen schließen, die einrasten; ein Magnet oder eine Feder allein öffnet sich in der Kurve.',
        'Im Fahrzeug Ecken mit mindestens 2.5 mm runden, vor allem bei Sitzen. Was die Prüfstelle verlangt, geht vor.',
      ],
    },
    overloading: {
      title: 'Masse und Zuladung',
      points: [
        'Die Massen hier sind gerechnet, nicht gewogen, und Möbel sind nicht der ganze Ausbau: Geräte ohne Masse in der Bibliothek, Batterie, Wasser und Tanks, Gas, Dämmung, Fenster und Polster kommen dazu.',
        'Das fertige Fahrzeug wiegen, Achse für Achse und Seite für Seite; zulässige Massen und Achslasten stehen in seinen Papieren, nicht auf diesen Seiten. Schweres nach unten.',
      ],
    },
    seats: {
      title: 'Sitze und Gurte',
      points: [
        'Ein Sitz, der während der Fahrt benutzt wird, seine Verankerung und sein Gurt brauchen einen Nachweis der Festigkeit, den kein Möbelprogramm geben kann. Änderungen an Sitzen und Gurten und alles, was vor oder hinter einem Gurtsitz steht, brauchen den, der sie abnehmen darf.',
        'Während der Fahrt sitzen alle angegurtet auf einem solchen Sitz, Tische sind verstaut, und niemand liegt im Bett.',
      ],
    },
    'ways-out': {
      title: 'Fluchtwege',
      points: [
        'Wer hier schläft, muss auf zwei Wegen hinauskommen, die von innen, ohne Werkzeug und im Dunkeln zu öffnen sind. Wie groß sie sein müssen, sagen die örtlichen Vorschriften für Wohnmobile; nichts darf darin stehen.',
      ],
    },
    gas: {
      title: 'Gas',
      points: [
        'Gas ist Arbeit nur für zugelassene Fachleute, und die Anlage wird geprüft, bevor sie das erste Mal benutzt wird. Leitungen, Lüftung, Abstände und Werkstoffe geben die Anleitung des Geräts und die Gasregeln Ihres Landes vor; Maße dieses Auftrags ersetzen sie nicht.',
        'Flaschen stehen aufrecht und festgebunden in einem Kasten, der zum Wohnraum dicht ist, an der tiefsten Stelle eine offene Bodenlüftung hat und nichts enthält, das Funken gibt.',
      ],
    },
    ventilation: {
      title: 'Luft',
      points: [
        'Lüftungen oben und unten bleiben offen, so groß wie die Anleitung des Geräts und die örtlichen Vorschriften sagen; kein Möbel, keine Matratze und keine Verkleidung darf sie zudecken. Öffnungen in diesen Zeichnungen sind ein Platz für Luft, kein Nachweis, dass sie reicht.',
        'Wo etwas brennt, gehört ein Melder für Kohlenmonoxid hin, wie seine Anleitung sagt.',
      ],
    },
    heat: {
      title: 'Heiße Geräte',
      points: [
        'Abstände zu Wänden, Fronten und dem, was darüber hängt, und wie Flächen zu schützen sind, geben die Anleitung des Geräts und die örtlichen Vorschriften vor. Steht ein Teil näher, dann versetzen, bevor gesägt wird.',
        'Ein Kocher ist keine Heizung und bleibt während der Fahrt aus. Feuerlöscher und Löschdecke dort, wo man sie auf dem Weg hinaus erreicht.',
      ],
    },
    electrics: {
      title: 'Elektrik',
      points: [
        'Die Anleitung eines Geräts sagt, wie viel Luft es braucht. Leitungen und Sicherungen sind Arbeit für die, die das Recht dafür zulässt, Netzspannung überall.',
        'Kabel fern von Schrauben und scharfen Kanten führen, und jede Verbindung erreichbar lassen.',
      ],
    },
    water: {
      title: 'Wasser',
      points: [
        'Wasser von der Elektrik fernhalten. Sägekanten eines Ausschnitts abdichten, bevor die Spüle hineinkommt, und Leitungen dort führen, wo man ein Leck sieht. Was Trinkwasser führt, muss dafür geeignet sein, wie Anleitung und örtliche Vorschriften sagen.',
      ],
    },
    'gas-stays': {
      title: 'Gasdruckfedern',
      points: [
        'Gasdruckfedern stehen unter Druck: nie öffnen oder erhitzen, und die Klappe beim Einbau festhalten. Welche Kraft eine Klappe braucht, sagt die Tabelle ihres Herstellers.',
      ],
    },
    'wall-fixing': {
      title: 'Befestigung an der Wand',
      points: [
        'Was an einer Wand hängt oder kippen kann, wird an dem befestigt, was trägt: Dübel für diese Art Wand, so viele und so tief, wie ihr Hersteller sagt. Hohle Wände und Decken brauchen jemanden, der sie kennt.',
        'Vor dem Bohren feststellen, wo Kabel und Leitungen laufen; örtliche Bauvorschriften gehen vor.',
      ],
    },
  },
};
