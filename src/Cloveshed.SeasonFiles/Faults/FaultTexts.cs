using System.Collections.Frozen;

namespace Cloveshed.SeasonFiles.Faults;

/// <summary>Every text of a fault, in English and Spanish: what was expected, and what to do. {0}, {1} … are the rule's own words.</summary>
internal static class FaultTexts
{
    public static (string Expected, string Remedy) Of(FaultRule rule, TextLanguage language)
    {
        Texts texts = All[rule];
        return language == TextLanguage.Spanish ? (texts.Esperado, texts.Remedio) : (texts.Expected, texts.Remedy);
    }

    private sealed record Texts(string Expected, string Remedy, string Esperado, string Remedio);

    private static readonly FrozenDictionary<FaultRule, Texts> All = new Dictionary<FaultRule, Texts>
    {
        [FaultRule.FolderMissing] = new(
            "a folder that exists", "Check the path for a slip, or make the folder and put the season's files into it.",
            "una carpeta que exista", "Revise la ruta, o cree la carpeta y ponga en ella los archivos de la temporada."),
        [FaultRule.FolderEmpty] = new(
            "a season's files: season.json and the CSV files", "Put the files into this folder, or name the folder that holds them.",
            "los archivos de una temporada: season.json y los archivos CSV", "Ponga los archivos en esta carpeta, o indique la carpeta que los tiene."),
        [FaultRule.FileMissing] = new(
            "this file in the folder", "Add it{0}. Its columns are in the description of the season files.",
            "este archivo en la carpeta", "Añádalo{0}. Sus columnas están en la descripción de los archivos de temporada."),
        [FaultRule.FileUnreadable] = new(
            "a file that can be opened and read", "Close the program that holds it, or allow reading it: {0}",
            "un archivo que se pueda abrir y leer", "Cierre el programa que lo tiene abierto, o permita su lectura: {0}"),
        [FaultRule.FileTooLarge] = new(
            "a file of at most {0} MB", "Check that it is the right file; a season's largest is a few MB.",
            "un archivo de {0} MB como máximo", "Compruebe que sea el archivo correcto; el mayor de una temporada tiene unos pocos MB."),
        [FaultRule.FileEmpty] = new(
            "a header row with the column names", "Write the column names, separated by commas, on the first line: {0}.",
            "una fila de encabezado con los nombres de las columnas", "Escriba los nombres de las columnas, separados por comas, en la primera línea: {0}."),
        [FaultRule.NotUtf8] = new(
            "text in UTF-8", "Save the file again as UTF-8 (in a spreadsheet: \"CSV UTF-8\").",
            "texto en UTF-8", "Guarde el archivo de nuevo como UTF-8 (en una hoja de cálculo: \"CSV UTF-8\")."),
        [FaultRule.Separator] = new(
            "fields separated by ','", "The fields look separated by '{0}': save the file with commas, and with points in numbers.",
            "campos separados por ','", "Los campos parecen separados por '{0}': guarde el archivo con comas, y con punto decimal en los números."),
        [FaultRule.ColumnMissing] = new(
            "this column in the header row", "Add the column; its name is written exactly so, in lower case.",
            "esta columna en la fila de encabezado", "Añada la columna; su nombre se escribe exactamente así, en minúsculas."),
        [FaultRule.ColumnTwice] = new(
            "each column once", "Delete one of the two, or give it its right name.",
            "cada columna una sola vez", "Borre una de las dos, o póngale su nombre correcto."),
        [FaultRule.FieldCount] = new(
            "{0} fields, as in the header row, not {1}", "Look for a missing or extra comma, a decimal comma, or text with a comma that is not in quotes.",
            "{0} campos, como en el encabezado, no {1}", "Busque una coma que falte o sobre, una coma decimal, o un texto con coma sin comillas."),
        [FaultRule.EmptyRow] = new(
            "a row with values", "Delete the empty row; only at the end of a file are they ignored.",
            "una fila con valores", "Borre la fila vacía; solo se ignoran al final del archivo."),
        [FaultRule.QuoteInField] = new(
            "a quote only around a whole field", "Put the whole field in quotes and double each quote within it: \"say \"\"so\"\"\".",
            "comillas solo alrededor de un campo entero", "Ponga el campo entero entre comillas y duplique las que lleve dentro: \"di \"\"sí\"\"\"."),
        [FaultRule.TextAfterQuote] = new(
            "a comma or the row's end after a closing quote", "Double each quote within a quoted field, and leave nothing after the closing one.",
            "una coma o el fin de la fila tras las comillas de cierre", "Duplique las comillas dentro de un campo entre comillas, y no deje nada tras las de cierre."),
        [FaultRule.QuoteNeverClosed] = new(
            "a closing quote for the one opened here", "Close the quote at the field's end, or remove it.",
            "las comillas de cierre de las abiertas aquí", "Cierre las comillas al final del campo, o quítelas."),
        [FaultRule.TooManyRows] = new(
            "at most {0} rows", "Rows from here on were not read. Check that it is the right file, or split the season.",
            "{0} filas como máximo", "Las filas desde aquí no se leyeron. Compruebe que sea el archivo correcto, o divida la temporada."),
        [FaultRule.CellEmpty] = new(
            "a value", "Fill this cell; it may not be empty.",
            "un valor", "Rellene esta celda; no puede estar vacía."),
        [FaultRule.TextTooLong] = new(
            "at most {0} characters", "Shorten the text.",
            "{0} caracteres como máximo", "Acorte el texto."),
        [FaultRule.Number] = new(
            "a number, such as 1250.5", "Write digits and a decimal point only: no unit, no currency sign, no spaces.",
            "un número, como 1250.5", "Escriba solo cifras y punto decimal: sin unidad, sin signo de moneda, sin espacios."),
        [FaultRule.DecimalComma] = new(
            "a number with a decimal point", "There is a comma in the number: write 1.5 for one and a half and 1500 for fifteen hundred.",
            "un número con punto decimal", "El número lleva una coma: escriba 1.5 para uno y medio y 1500 para mil quinientos."),
        [FaultRule.NotFinite] = new(
            "a finite number", "Write the number itself; where it is not known and the column allows it, leave the cell empty.",
            "un número finito", "Escriba el número; si no se conoce y la columna lo permite, deje la celda vacía."),
        [FaultRule.Whole] = new(
            "a whole number {0}", "Write it without a fraction.",
            "un número entero {0}", "Escríbalo sin fracción."),
        [FaultRule.Range] = new(
            "a number {0}", "Check sign, decimal point and unit.",
            "un número {0}", "Revise el signo, el punto decimal y la unidad."),
        [FaultRule.LimitRange] = new(
            "a number {0}", "Check it; where there is no limit, leave it out instead of a huge number.",
            "un número {0}", "Revíselo; si no hay límite, omítalo en lugar de un número enorme."),
        [FaultRule.ShareRange] = new(
            "a share {0}", "Write 85 percent as 0.85.",
            "una proporción {0}", "Escriba 85 por ciento como 0.85."),
        [FaultRule.PercentRange] = new(
            "percent {0}", "Write 65 percent as 65.",
            "un porcentaje {0}", "Escriba 65 por ciento como 65."),
        [FaultRule.CelsiusRange] = new(
            "degrees Celsius {0}", "Check that it is not in Fahrenheit: 32 °F is 0 °C.",
            "grados Celsius {0}", "Compruebe que no esté en Fahrenheit: 32 °F son 0 °C."),
        [FaultRule.Date] = new(
            "a date as year-month-day from 1900 to 2199, such as 2026-10-05", "Write a day that exists, in this form.",
            "una fecha como año-mes-día de 1900 a 2199, como 2026-10-05", "Escriba un día que exista, en esta forma."),
        [FaultRule.Monday] = new(
            "the Monday that names a week", "Write {0}, the Monday of that week.",
            "el lunes que da nombre a la semana", "Escriba {0}, el lunes de esa semana."),
        [FaultRule.YesNo] = new(
            "yes, no, or an empty cell", "Write yes or no.",
            "yes (sí), no, o una celda vacía", "Escriba yes o no."),
        [FaultRule.Word] = new(
            "one of: {0}", "Write one of these words.",
            "una de: {0}", "Escriba una de estas palabras."),
        [FaultRule.ReservedName] = new(
            "a name other than \"{0}\"", "Choose another name; the answer files use this one for what falls into none.",
            "un nombre distinto de \"{0}\"", "Elija otro nombre; los archivos de respuesta usan este para lo que no cae en ninguno."),
        [FaultRule.Json] = new(
            "one JSON object", "Correct the text here; the reader says: {0}",
            "un objeto JSON", "Corrija el texto aquí; el lector dice: {0}"),
        [FaultRule.JsonKind] = new(
            "a {0}", "Write it so: {1}.",
            "un valor de tipo {0}", "Escríbalo así: {1}."),
        [FaultRule.JsonKeyMissing] = new(
            "this key", "Add it, for example {0}.",
            "esta clave", "Añádala, por ejemplo {0}."),
        [FaultRule.JsonKeyTwice] = new(
            "each key once", "Delete one of the two.",
            "cada clave una sola vez", "Borre una de las dos."),
        [FaultRule.Contract] = new(
            "contract 1 or 2", "This program reads these contracts only: use a program for that contract, or write the files for one of these.",
            "el contrato 1 o 2", "Este programa solo lee estos contratos: use un programa para ese contrato, o escriba los archivos según uno de estos."),
        [FaultRule.Currency] = new(
            "a currency code of ISO 4217: three capital letters", "Write it so: USD, EUR, MXN.",
            "un código de moneda de ISO 4217: tres letras mayúsculas", "Escríbalo así: USD, EUR, MXN."),
        [FaultRule.AsOfAfterSeason] = new(
            "a date not after the season's last day, {0}", "Correct as_of, first_week or weeks.",
            "una fecha no posterior al último día de la temporada, {0}", "Corrija as_of, first_week o weeks."),
        [FaultRule.MinNotBelowMax] = new(
            "a max_mm above this row's min_mm, {0}", "Correct one of the two.",
            "un max_mm mayor que el min_mm de la fila, {0}", "Corrija uno de los dos."),
        [FaultRule.LowAboveHigh] = new(
            "{0} not above {1} of the same row, {2}", "Correct one of the two.",
            "{0} no mayor que {1} de la misma fila, {2}", "Corrija uno de los dos."),
        [FaultRule.SharesAboveOne] = new(
            "fresh_share and crack_share that sum to at most 1, not {0}", "Lower one of the two: a bulb is either fit for fresh, or sound but not fit, or waste.",
            "fresh_share y crack_share que sumen como máximo 1, no {0}", "Baje una de las dos: un bulbo sirve para fresco, o está sano sin servir, o es desecho."),
        [FaultRule.LawInParts] = new(
            "all numbers of the law or none: a goes with b", "Fill this cell too, or empty the others of the same law.",
            "todos los números de la ley o ninguno: a va con b", "Rellene también esta celda, o vacíe las otras de la misma ley."),
        [FaultRule.ShipFromAfterDue] = new(
            "a ship_from not after due, {0}", "Correct one of the two dates; an empty ship_from means the Monday of the due week.",
            "un ship_from no posterior a due, {0}", "Corrija una de las dos fechas; ship_from vacío significa el lunes de la semana de due."),
        [FaultRule.KeyTwice] = new(
            "each {0} in one row only; it is already on line {1}", "Delete one of the two rows, or correct the one that is wrong.",
            "cada {0} en una sola fila; ya está en la línea {1}", "Borre una de las dos filas, o corrija la equivocada."),
        [FaultRule.SizeGap] = new(
            "{0}, the max_mm of the class before", "Let each class begin where the one before it ends, small to large.",
            "{0}, el max_mm de la clase anterior", "Haga que cada clase empiece donde termina la anterior, de menor a mayor."),
        [FaultRule.SizeOpenEnd] = new(
            "a max_mm: only the last class may have none", "Write where this class ends, or move its row to the end.",
            "un max_mm: solo la última clase puede no tenerlo", "Escriba dónde termina esta clase, o lleve su fila al final."),
        [FaultRule.GradesOverlap] = new(
            "grades that do not overlap; this one does with {0} on line {1}", "Move one of the limits, so that each width belongs to one grade.",
            "grados que no se solapen; este se solapa con {0} en la línea {1}", "Mueva uno de los límites, para que cada ancho pertenezca a un solo grado."),
        [FaultRule.LotDiffers] = new(
            "\"{0}\", as in the lot's row on line {1}", "Rows of one lot may differ only in place, bins, net, net_low, net_high, harvested, fresh_share and crack_share: make them alike, or give this one a lot number of its own.",
            "\"{0}\", como en la fila del lote en la línea {1}", "Las filas de un lote solo pueden diferir en place, bins, net, net_low, net_high, harvested, fresh_share y crack_share: iguálelas, o dé a esta su propio número de lote."),
        [FaultRule.Unknown] = new(
            "a name that {0} has under {1}", "Add it there, or correct the name here: capitals and spaces count.",
            "un nombre que {0} tenga en {1}", "Añádalo allí, o corrija aquí el nombre: cuentan las mayúsculas y los espacios."),
        [FaultRule.YieldMissing] = new(
            "a row for this mode in yields.csv, since a line uses it", "Add the row with its kept_share.",
            "una fila para este modo en yields.csv, ya que una línea lo usa", "Añada la fila con su kept_share."),
        [FaultRule.RowOverfull] = new(
            "at most {0} bins, the capacity of {1}", "Correct the bins, the place or its capacity_bins.",
            "como máximo {0} bins, la capacidad de {1}", "Corrija los bins, el lugar o su capacity_bins."),
        [FaultRule.PlaceOverfull] = new(
            "at most {0} bins in {1} when the plan starts; with this row there are {2}", "Correct the bins, the places or the capacity_bins.",
            "como máximo {0} bins en {1} al empezar el plan; con esta fila hay {2}", "Corrija los bins, los lugares o la capacity_bins."),
        [FaultRule.SealedAfterAsOf] = new(
            "a date not after as_of, {0}", "List only rooms that are sealed already; the plan decides on the others.",
            "una fecha no posterior a as_of, {0}", "Ponga solo las cámaras ya cerradas; de las otras decide el plan."),
        [FaultRule.NotSealable] = new(
            "a place of kind sealed; this one is {0}", "Correct the place, or its kind in places.csv.",
            "un lugar de tipo sealed; este es {0}", "Corrija el lugar, o su kind en places.csv."),
        [FaultRule.HarvestedAfterSealing] = new(
            "a place that was not closed before the lot was harvested; {0} is sealed since {1}", "Correct the place, the harvest date, or rooms.csv.",
            "un lugar que no se cerrara antes de la cosecha del lote; {0} está cerrado desde {1}", "Corrija el lugar, la fecha de cosecha, o rooms.csv."),
        [FaultRule.MadeAfterAsOf] = new(
            "a week not after the one of as_of, {0}", "List only stock that stands there on that day; the plan makes the rest.",
            "una semana no posterior a la de as_of, {0}", "Ponga solo las existencias de ese día; el plan hace el resto."),
        [FaultRule.FileNotThere] = new(
            "a file that exists", "Check the path for a slip.",
            "un archivo que exista", "Revise la ruta."),
        [FaultRule.NoRows] = new(
            "at least one {0}", "Add rows under the header.",
            "al menos una fila con {0}", "Añada filas bajo el encabezado."),
        [FaultRule.OneColumnOf] = new(
            "one of the columns {0}", "Add one of them; its name is written exactly so, in small letters.",
            "una de las columnas {0}", "Añada una de ellas; su nombre se escribe exactamente así, en minúsculas."),
        [FaultRule.OneCellOf] = new(
            "a value in one of {0}", "Fill one of these cells, or delete the row.",
            "un valor en una de {0}", "Rellene una de estas celdas, o borre la fila."),
        [FaultRule.PriceMissing] = new(
            "a row for each class of the chart; {0} has none", "Add its row; a class that you do not sell has price 0.",
            "una fila para cada clase de la tabla; {0} no tiene", "Añada su fila; una clase que no vende tiene precio 0."),
        [FaultRule.SplitByBoth] = new(
            "min_mm in every row, or share in every row and no min_mm", "Fill the column in all rows, or empty it in all.",
            "min_mm en todas las filas, o share en todas y ningún min_mm", "Rellene la columna en todas las filas, o vacíela en todas."),
        [FaultRule.SplitSum] = new(
            "shares that sum to at most 1, not {0}", "Lower one of them; what is left under 1 is the smallest cloves, of no grade.",
            "proporciones que sumen como máximo 1, no {0}", "Baje una de ellas; lo que falte hasta 1 son los dientes más chicos, sin grado."),
        [FaultRule.NotOfKind] = new(
            "an empty cell in a row of kind {0}", "Empty it, or write another kind: rows of this kind have no such thing.",
            "una celda vacía en una fila de clase {0}", "Vacíela, o escriba otra clase: las filas de esta clase no lo tienen."),
        [FaultRule.NameOfKind] = new(
            "a name that {1} has under {2}, or an empty cell for any, in a row of kind {0}", "Add it there, correct the name here (capitals and spaces count), or empty the cell.",
            "un nombre que {1} tenga en {2}, o una celda vacía para cualquiera, en una fila de clase {0}", "Añádalo allí, corrija aquí el nombre (cuentan las mayúsculas y los espacios), o vacíe la celda."),
        [FaultRule.OrganicWord] = new(
            "{0} or {1}, or an empty cell for either", "Write one of the two words, or empty the cell.",
            "{0} o {1}, o una celda vacía para ambos", "Escriba una de las dos palabras, o vacíe la celda."),
        [FaultRule.TimeOfDay] = new(
            "a time of day as hours:minutes, such as 06:30", "Write hours from 00 to 23 and minutes from 00 to 59; an end at midnight is 24:00.",
            "una hora del día como horas:minutos, como 06:30", "Escriba horas de 00 a 23 y minutos de 00 a 59; un final a medianoche es 24:00."),
        [FaultRule.Moment] = new(
            "a day and a time, such as 2026-10-05 14:30", "Write year-month-day, a space or T, and hours:minutes; an offset such as -05:00 may follow.",
            "un día y una hora, como 2026-10-05 14:30", "Escriba año-mes-día, un espacio o T, y horas:minutos; puede seguir una diferencia como -05:00."),
        [FaultRule.MomentAhead] = new(
            "a moment that has come already", "Check the day and the clock of the instrument that wrote it.",
            "un momento que ya llegó", "Revise el día y el reloj del aparato que lo escribió."),
        [FaultRule.NeedsContract] = new(
            "a season of contract {0}: what stands in this file changes what a plan is worth", "Write \"contract\": {0} in season.json, or take the file out of the folder.",
            "una temporada del contrato {0}: lo que dice este archivo cambia lo que vale un plan", "Escriba \"contract\": {0} en season.json, o saque el archivo de la carpeta."),
        [FaultRule.OnlyOneOf] = new(
            "a value in only one of {0}", "Empty one of these cells.",
            "un valor en solo una de {0}", "Vacíe una de estas celdas."),
        [FaultRule.ToBeforeFrom] = new(
            "a week not before the row's from, {0}", "Correct one of the two: both weeks are included.",
            "una semana no anterior al from de la fila, {0}", "Corrija una de las dos: ambas semanas cuentan."),
        [FaultRule.SpansOverlap] = new(
            "weeks that no other row of {0} has; line {1} has the week of {2} too", "Let one row end in the week before the next begins.",
            "semanas que ninguna otra fila de {0} tenga; la línea {1} también tiene la semana del {2}", "Haga que una fila termine en la semana anterior al comienzo de la otra."),
        [FaultRule.ProgramDiffers] = new(
            "\"{0}\", as in the program's row on line {1}", "A program is of one customer: make them alike, or give this row a program of its own.",
            "\"{0}\", como en la fila del programa en la línea {1}", "Un programa es de un solo cliente: iguálelos, o dé a esta fila su propio programa."),
        [FaultRule.NoListPrice] = new(
            "a list with a price of {0} in the week of {1}", "Add the weeks to price-lists.csv, or write a price in the row instead of the list.",
            "una lista con precio de {0} en la semana del {1}", "Añada las semanas a price-lists.csv, o escriba un precio en la fila en lugar de la lista."),
        [FaultRule.NoFreight] = new(
            "a destination with freight for {0}", "Add the product to freight.csv, or a row with an empty product for any other.",
            "un destino con flete para {0}", "Añada el producto a freight.csv, o una fila con product vacío para cualquier otro."),
        [FaultRule.BelowNothing] = new(
            "a price that promotions and freight leave at 0 or more; in the week of {0} it is {1}, less {2} of promotions, less {3} of freight", "Correct the price, its promotions or the freight.",
            "un precio que promociones y flete dejen en 0 o más; en la semana del {0} es {1}, menos {2} de promociones, menos {3} de flete", "Corrija el precio, sus promociones o el flete."),
        [FaultRule.OrderNameTaken] = new(
            "a program whose weeks are called as no order of orders.csv; \"{0}\" is one", "Rename the order, or the program.",
            "un programa cuyas semanas no se llamen como un pedido de orders.csv; \"{0}\" es uno", "Cambie el nombre del pedido, o el del programa."),
    }.ToFrozenDictionary();
}
