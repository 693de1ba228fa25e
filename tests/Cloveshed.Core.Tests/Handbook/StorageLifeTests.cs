using Cloveshed.Core.Keep;

namespace Cloveshed.Core.Tests.Handbook;

public class StorageLifeTests(ITestOutputHelper output)
{
    [Fact]
    public void Show()
    {
        var p = StorageRows.Fit();
        output.WriteLine(p.ToString());
        foreach (var r in StorageRows.All) output.WriteLine($"{r.Name} {r.Residual(p):0.000}");
        output.WriteLine(StorageRows.SquaredError(p).ToString(System.Globalization.CultureInfo.InvariantCulture));
        var q = WeightRows.Fit();
        output.WriteLine($"{q.LossBase} {q.LossPerKpa}");
        foreach (var r in WeightRows.All) output.WriteLine($"{r.Name} {r.Residual(q):0.000}");
        Assert.Fail();
    }
}
