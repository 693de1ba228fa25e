namespace Cloveshed.SeasonFiles;

/// <summary>
/// Puts a set of files into a folder all or not at all: they are first written whole into a new folder beside it, then each takes
/// its place by a rename, the last one last; if a step fails, what was there before is put back. Other files stay as they are.
/// </summary>
internal static class FolderSwap
{
    public static void Put(string folder, IReadOnlyList<(string Name, byte[] Bytes)> files)
    {
        string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        string parent = Path.GetDirectoryName(target) ?? throw new ArgumentException("The root of a drive can't be an answer's folder.", nameof(folder));
        Directory.CreateDirectory(parent);
        // Beside the target, so that the renames stay within one file system.
        string waiting = Path.Combine(parent, $".{Path.GetFileName(target)}.{Path.GetRandomFileName()}");
        string former = Path.Combine(waiting, "former");
        Directory.CreateDirectory(former);
        try
        {
            foreach ((string name, byte[] bytes) in files)
                WriteThrough(Path.Combine(waiting, name), bytes);
            bool made = !Directory.Exists(target);
            Directory.CreateDirectory(target);
            Swap(target, waiting, former, files, made);
        }
        finally
        {
            Directory.Delete(waiting, recursive: true);
        }
    }

    private static void Swap(string target, string waiting, string former, IReadOnlyList<(string Name, byte[] Bytes)> files, bool made)
    {
        List<string> replaced = [], placed = [];
        try
        {
            // The last file tells readers that the set is whole, so its former version goes before anything changes.
            for (int at = files.Count - 1; at >= 0; at--)
                if (File.Exists(Path.Combine(target, files[at].Name)))
                {
                    File.Move(Path.Combine(target, files[at].Name), Path.Combine(former, files[at].Name));
                    replaced.Add(files[at].Name);
                }
            foreach ((string name, _) in files)
            {
                File.Move(Path.Combine(waiting, name), Path.Combine(target, name));
                placed.Add(name);
            }
        }
        catch
        {
            foreach (string name in placed)
                File.Delete(Path.Combine(target, name));
            foreach (string name in replaced)
                File.Move(Path.Combine(former, name), Path.Combine(target, name));
            if (made)
                Directory.Delete(target);
            throw;
        }
    }

    private static void WriteThrough(string path, byte[] bytes)
    {
        using FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write);
        stream.Write(bytes);
        stream.Flush(flushToDisk: true);
    }
}
