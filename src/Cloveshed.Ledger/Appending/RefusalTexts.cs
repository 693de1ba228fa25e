using System.Globalization;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>The rules that an append is held to, each with what is said and what to do. A season's faults have the season reader's words.</summary>
internal static class RefusalTexts
{
    public const string
        IdForm = "id-form", KindUnknown = "kind-unknown", TextLength = "text-length", TimeAhead = "time-ahead", BodyForm = "body-form", BodyVersion = "body-version",
        BodySize = "body-size", FactChanged = "fact-changed", CorrectsMissing = "corrects-missing", CorrectsUnknown = "corrects-unknown", SeasonNone = "season-none",
        RowGone = "row-gone", RowMoved = "row-moved", HoldGone = "hold-gone", HoldUnknown = "hold-unknown", HoldWeek = "hold-week", HoldMass = "hold-mass",
        PlanUnknown = "plan-unknown", JobUnknown = "job-unknown", JobEnded = "job-ended", BasisAhead = "basis-ahead", DocumentMissing = "document-missing", DocumentDigest = "document-digest",
        RecordOther = "record-other", RecordMoved = "record-moved", AirEmpty = "air-empty", AirRange = "air-range", RoomKind = "room-kind", RoomFigure = "room-figure", StepUntested = "step-untested",
        StepOverLimit = "step-over-limit", YardNumber = "yard-number", LookCounts = "look-counts";

    private static readonly Dictionary<string, (string Message, string Remedy, string Mensaje, string Remedio)> Texts = new(StringComparer.Ordinal)
    {
        [IdForm] = (
            "The id {0} is not a UUID of version 7.", "Make a new id of version 7 where the fact is made.",
            "El id {0} no es un UUID de versión 7.", "Haga un id nuevo de versión 7 donde se hace el hecho."),
        [KindUnknown] = (
            "There is no kind of fact \"{0}\".", "Use one of the kinds that docs/manual/ledger.md lists.",
            "No hay ninguna clase de hecho \"{0}\".", "Use una de las clases que lista docs/manual/ledger.md."),
        [TextLength] = (
            "{0} is empty, has control characters, or is longer than {1}.", "Give a short name of a role, device or place.",
            "{0} está vacío, tiene caracteres de control, o pasa de {1}.", "Dé un nombre corto de un papel, aparato o lugar."),
        [TimeAhead] = (
            "It is said to happen at {0}, more than a day ahead of the ledger's clock.", "Set the clock of the device, and say when it happened.",
            "Dice que pasa a las {0}, más de un día adelante del reloj del libro.", "Ponga a la hora el reloj del aparato, y diga cuándo pasó."),
        [BodyForm] = (
            "The body of {0} is not of its form: {1}.", "docs/manual/ledger.md says what each kind holds.",
            "El cuerpo de {0} no tiene su forma: {1}.", "docs/manual/ledger.md dice qué lleva cada clase."),
        [BodyVersion] = (
            "The body says version {0}; this program knows version 1.", "Use a program as new as the one that made the fact.",
            "El cuerpo dice versión {0}; este programa conoce la versión 1.", "Use un programa tan nuevo como el que hizo el hecho."),
        [BodySize] = (
            "The body is larger than {0} bytes.", "Put what is large into a document.",
            "El cuerpo pasa de {0} bytes.", "Ponga lo grande en un documento."),
        [FactChanged] = (
            "The id {0} was taken before with another content.", "A fact is never changed: hand in a new one, with its own id, that corrects it.",
            "El id {0} ya se tomó con otro contenido.", "Un hecho nunca se cambia: entregue uno nuevo, con su propio id, que lo corrija."),
        [CorrectsMissing] = (
            "{0} must name the fact that it corrects.", "Give the id of the fact that set the row or hold.",
            "{0} debe nombrar el hecho que corrige.", "Dé el id del hecho que fijó el renglón o la orden."),
        [CorrectsUnknown] = (
            "It corrects {0}, which is not in the ledger.", "Hand that fact in first.",
            "Corrige {0}, que no está en el libro.", "Entregue primero ese hecho."),
        [SeasonNone] = (
            "No season is open.", "Import a season first.",
            "No hay ninguna temporada abierta.", "Importe primero una temporada."),
        [RowGone] = (
            "{0} has no row {1} any more.", "Look at the file again.",
            "{0} ya no tiene el renglón {1}.", "Vea de nuevo el archivo."),
        [RowMoved] = (
            "Row {1} of {0} was changed meanwhile.", "Look at what it says now, and change that.",
            "El renglón {1} de {0} cambió mientras tanto.", "Vea lo que dice ahora, y cambie eso."),
        [HoldGone] = (
            "That pin or bar is not in force.", "Look at the plan again: somebody may have lifted it.",
            "Esa orden no está en vigor.", "Vea de nuevo el plan: alguien pudo haberla quitado."),
        [HoldUnknown] = (
            "The season has no {0} \"{1}\".", "Name one of the season's.",
            "La temporada no tiene {0} \"{1}\".", "Nombre uno de la temporada."),
        [HoldWeek] = (
            "{0} is not the Monday of one of the season's weeks.", "Name the Monday of a week of the season.",
            "{0} no es el lunes de una semana de la temporada.", "Nombre el lunes de una semana de la temporada."),
        [HoldMass] = (
            "A run cannot be pinned to {0}.", "Give a mass of 0 (at all) or more.",
            "No se puede fijar una corrida a {0}.", "Dé un peso de 0 (lo que sea) o más."),
        [PlanUnknown] = (
            "There is no plan {0}.", "Adopt a plan that was made and held in the check.",
            "No hay ningún plan {0}.", "Adopte un plan que se hizo y se sostuvo en la revisión."),
        [JobUnknown] = (
            "No plan was asked for by {0}.", "Ask for a plan first.",
            "Ningún plan se pidió con {0}.", "Pida primero un plan."),
        [JobEnded] = (
            "The job {0} has ended already.", "Ask for a new plan.",
            "El trabajo {0} ya terminó.", "Pida un plan nuevo."),
        [BasisAhead] = (
            "The basis {0} is no fact of this ledger.", "Name the number of the fact that was last when planning began.",
            "La base {0} no es un hecho de este libro.", "Nombre el número del último hecho cuando empezó la planeación."),
        [DocumentMissing] = (
            "The document {0} is not there.", "Hand it in together with the fact.",
            "El documento {0} no está.", "Entréguelo junto con el hecho."),
        [DocumentDigest] = (
            "A document was handed in as {0}, which is not its SHA-256.", "Work the digest out again from its bytes.",
            "Un documento se entregó como {0}, que no es su SHA-256.", "Calcule de nuevo el resumen de sus bytes."),
        [RecordOther] = (
            "{0} cannot correct the fact {1}, which is of another kind or place.", "Correct a record by one of the same kind, about the same place.",
            "{0} no puede corregir el hecho {1}, que es de otra clase o lugar.", "Corrija un registro con uno de la misma clase, del mismo lugar."),
        [RecordMoved] = (
            "The record {0} was corrected or withdrawn meanwhile.", "Look at what it says now, and correct that.",
            "El registro {0} se corrigió o retiró mientras tanto.", "Vea lo que dice ahora, y corrija eso."),
        [AirEmpty] = (
            "The reading reads nothing.", "Give at least one of temperature, humidity, oxygen and carbon dioxide.",
            "La lectura no lee nada.", "Dé al menos una de temperatura, humedad, oxígeno y dióxido de carbono."),
        [AirRange] = (
            "{0} says {1}; it lies between {2} and {3}.", "Check the unit and the decimal point: degrees Celsius, and percent.",
            "{0} dice {1}; está entre {2} y {3}.", "Revise la unidad y el punto decimal: grados Celsius, y por ciento."),
        [RoomKind] = (
            "{0} is an open place, and no room.", "Name a cold room or a room that can be sealed.",
            "{0} es un lugar abierto, y no un cuarto.", "Nombre un cuarto frío o uno que se pueda sellar."),
        [RoomFigure] = (
            "The figure {0} says {1}; it lies between {2} and {3}.", "Check the unit: metres, watts, kilowatts, °C and percent.",
            "La cifra {0} dice {1}; está entre {2} y {3}.", "Revise la unidad: metros, vatios, kilovatios, °C y por ciento."),
        [StepUntested] = (
            "A room is turned over by tests that are written down, and {0} is missing.", "Say what was measured of each gas, by whom, with what and when; who stays outside; and whether doors and machines are locked and tagged. Local code comes first.",
            "Un cuarto se entrega con pruebas escritas, y falta: {0}.", "Diga qué se midió de cada gas, quién, con qué y cuándo; quién se queda fuera; y si puertas y máquinas tienen candado y etiqueta. La norma local va primero."),
        [StepOverLimit] = (
            "{0} was measured as {1}, past the limit of {2}.", "Nobody goes in. Go on airing from outside, test again, and write that down. Local code comes first.",
            "{0} se midió en {1}, pasado el límite de {2}.", "Nadie entra. Siga ventilando desde fuera, pruebe otra vez, y escríbalo. La norma local va primero."),
        [YardNumber] = (
            "{0} says {1}; it lies between {2} and {3}.", "Check the unit and the decimal point: degrees Celsius, percent, millimetres, metres a second, whole bulbs.",
            "{0} dice {1}; está entre {2} y {3}.", "Revise la unidad y el punto decimal: grados Celsius, por ciento, milímetros, metros por segundo, bulbos enteros."),
        [LookCounts] = (
            "{0} sprouted and {1} decayed are more than the {2} bulbs that were looked at.", "Count each bulb once: a bulb that is both counts as decayed.",
            "{0} brotados y {1} podridos son más que los {2} bulbos que se vieron.", "Cuente cada bulbo una vez: el que es ambas cosas cuenta como podrido."),
    };

    /// <summary>Every rule, for the manual's test.</summary>
    public static IEnumerable<string> Rules => Texts.Keys;

    public static Refusal Of(Guid id, string rule, TextLanguage language, params ReadOnlySpan<object?> words)
    {
        (string message, string remedy, string mensaje, string remedio) = Texts[rule];
        bool spanish = language == TextLanguage.Spanish;
        return new Refusal(id, rule, string.Format(CultureInfo.InvariantCulture, spanish ? mensaje : message, words), spanish ? remedio : remedy);
    }
}
