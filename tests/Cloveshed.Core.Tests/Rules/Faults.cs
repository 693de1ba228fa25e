namespace Cloveshed.Core.Tests.Rules;

/// <summary>A rule's faults, all of them in one message: whoever broke it sees every place at once.</summary>
internal static class Faults
{
    public static void None<T>(IEnumerable<T> faults)
    {
        string[] found = [.. faults.Select(fault => $"{fault}")];
        Assert.True(found.Length == 0, $"{found.Length} found:\n{string.Join('\n', found)}");
    }
}
