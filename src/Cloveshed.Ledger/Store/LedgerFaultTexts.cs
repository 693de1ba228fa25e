using System.Globalization;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Store;

/// <summary>What is said of each fault, with its remedy: {0} is the file or address, {1} what the database or system said.</summary>
internal static class LedgerFaultTexts
{
    private static readonly Dictionary<LedgerFaultKind, (string English, string Spanish)> Texts = new()
    {
        [LedgerFaultKind.FolderMissing] = (
            "The folder of {0} is not there. Make it, or name another file.",
            "La carpeta de {0} no existe. Créela, o indique otro archivo."),
        [LedgerFaultKind.NotAnAddress] = (
            "\"{0}\" names no ledger. Name a file, such as shed.db.",
            "\"{0}\" no indica ningún libro. Indique un archivo, como shed.db."),
        [LedgerFaultKind.NotYetServed] = (
            "{0}: this version keeps its ledger in one SQLite file only. Name a file, such as shed.db.",
            "{0}: esta versión guarda su libro solo en un archivo SQLite. Indique un archivo, como shed.db."),
        [LedgerFaultKind.Missing] = (
            "There is no ledger {0}. Import a season first, or name the ledger with --db.",
            "No hay ningún libro {0}. Importe primero una temporada, o indique el libro con --db."),
        [LedgerFaultKind.Exists] = (
            "{0} is there already, and nothing is written over it. Name a new file, or move this one away.",
            "{0} ya existe, y no se escribe encima. Indique un archivo nuevo, o mueva este."),
        [LedgerFaultKind.CannotOpen] = (
            "{0} cannot be opened: {1}. Allow reading and writing there, or name another file.",
            "No se puede abrir {0}: {1}. Permita leer y escribir ahí, o indique otro archivo."),
        [LedgerFaultKind.NotALedger] = (
            "{0} is not a ledger of this program. Nothing in it was changed. Name another file.",
            "{0} no es un libro de este programa. No se cambió nada en él. Indique otro archivo."),
        [LedgerFaultKind.NewerProgram] = (
            "{0} was written by a newer version of this program ({1}). Use that version.",
            "{0} fue escrito por una versión más nueva de este programa ({1}). Use esa versión."),
        [LedgerFaultKind.Corrupt] = (
            "{0} is damaged: {1}. Keep it as it is, and restore the last backup into a new file with \"cloveshed restore\".",
            "{0} está dañado: {1}. Guárdelo como está, y restaure el último respaldo en un archivo nuevo con \"cloveshed restore\"."),
        [LedgerFaultKind.DiskFull] = (
            "There is no room left to write {0}. Nothing of this was taken. Free space on its disk, then do it again.",
            "No queda espacio para escribir {0}. No se tomó nada de esto. Libere espacio en su disco, y hágalo de nuevo."),
        [LedgerFaultKind.ReadOnly] = (
            "{0} may not be written. Nothing of this was taken. Allow writing to the file and its folder, then do it again.",
            "No se permite escribir en {0}. No se tomó nada de esto. Permita escribir en el archivo y su carpeta, y hágalo de nuevo."),
        [LedgerFaultKind.Locked] = (
            "Another program holds {0} for writing and did not let go in time. Nothing of this was taken. Do it again; if it stays so, end that program.",
            "Otro programa tiene {0} ocupado y no lo soltó a tiempo. No se tomó nada de esto. Hágalo de nuevo; si sigue así, cierre ese programa."),
        [LedgerFaultKind.WriteFailed] = (
            "{0} could not be read or written: {1}. Nothing of this was taken. See that its disk has room and is sound, then do it again.",
            "No se pudo leer o escribir {0}: {1}. No se tomó nada de esto. Vea que su disco tenga espacio y esté sano, y hágalo de nuevo."),
        [LedgerFaultKind.Refused] = (
            "The database refused a step on {0}: {1}. Nothing of this was taken. Report it with what you did.",
            "La base de datos rechazó un paso en {0}: {1}. No se tomó nada de esto. Infórmelo con lo que hizo."),
        [LedgerFaultKind.Unproven] = (
            "{0} does not prove what it holds: {1}. It was not used. Use another backup; \"cloveshed ledger verify\" names every fault.",
            "{0} no prueba lo que contiene: {1}. No se usó. Use otro respaldo; \"cloveshed ledger verify\" nombra cada falla."),
    };

    public static string Say(LedgerFaultKind kind, TextLanguage language, string place, string detail)
    {
        (string english, string spanish) = Texts[kind];
        return string.Format(CultureInfo.InvariantCulture, language == TextLanguage.Spanish ? spanish : english, place, detail.TrimEnd('.'));
    }
}
