namespace Cloveshed.SeasonFiles.Faults;

/// <summary>Every text of a warning, in English and Spanish.</summary>
internal static class WarningTexts
{
    public static string Of(WarningRule rule, TextLanguage language)
    {
        (string english, string spanish) = rule switch
        {
            WarningRule.UnknownFile => (
                "not a file of a season; it was left alone",
                "no es un archivo de temporada; no se tocó"),
            WarningRule.UnknownColumn => (
                "this column is not known and was left out",
                "esta columna no se conoce y se dejó fuera"),
            WarningRule.UnknownKey => (
                "this key is not known and was left out",
                "esta clave no se conoce y se dejó fuera"),
            WarningRule.OutsideSeason => (
                "{0} rows name weeks outside the season and were left out (first on this line)",
                "{0} filas nombran semanas fuera de la temporada y se dejaron fuera (la primera en esta línea)"),
            WarningRule.LotAfterSeason => (
                "lot {0} in {1} starts after the season and was left out",
                "el lote {0} en {1} empieza después de la temporada y se dejó fuera"),
            WarningRule.SamplesOfLeftOut => (
                "{0} samples are of lots that start after the season and were left out (first on this line)",
                "{0} muestras son de lotes que empiezan después de la temporada y se dejaron fuera (la primera en esta línea)"),
            WarningRule.HumidityLikeShare => (
                "{0} was read as {0} percent; if a share was meant, write it as percent",
                "{0} se leyó como {0} por ciento; si es una proporción, escríbala en porcentaje"),
            WarningRule.HoursAboveWeek => (
                "{0} hours are more than the 168 of a week; right only if the row stands for several machines",
                "{0} horas son más que las 168 de una semana; solo es correcto si la fila representa varias máquinas"),
            WarningRule.BulbLawMissing => (
                "the law of bulb mass has empty cells; it was read with mass_a {0}, mass_b {1}, mass_s {2}, as of ordinary garlic",
                "la ley de la masa del bulbo tiene celdas vacías; se leyó con mass_a {0}, mass_b {1}, mass_s {2}, como de ajo común"),
            WarningRule.ColumnOfTerms => (
                "this column counts from contract 2 on and was left out; to use it, write \"contract\": 2 in season.json",
                "esta columna cuenta a partir del contrato 2 y se dejó fuera; para usarla, escriba \"contract\": 2 en season.json"),
            WarningRule.PromotionIdle => (
                "promotion {0} covers no program and no line that a list prices, and changes nothing",
                "la promoción {0} no abarca ningún programa ni línea con precio de lista, y no cambia nada"),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, null),
        };
        return language == TextLanguage.Spanish ? spanish : english;
    }
}
