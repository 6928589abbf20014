using Pipeline.Abstractions;
using Pipeline.Tests.Units.House;
using Pipeline.Tests.Units.Plugins;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>The demo files bind with the verbs of the house.</summary>
public class DemoFileTests
{
    [Theory]
    [InlineData("workflows/first.yaml")]
    [InlineData("workflows/tidewater.yaml")]
    [InlineData("workflows/harbour-fair.yaml")]
    [InlineData("workflows/together/lightship.yaml", "workflows/together/ferry-cats.yaml")]
    public void A_demo_file_gives_a_batch_and_no_finding(params string[] files)
    {
        var readings = files.Select(file => Reader.Read(new SourceText(file, File.ReadAllText(Path.Combine(Repository.Root, file))))).ToList();
        readings.SelectMany(reading => reading.Findings).Should().BeEmpty();

        var bound = Binder.Bind([.. readings.Select(reading => reading.Tree!)], HouseTrade.Trade);

        bound.Findings.Should().BeEmpty(string.Join('\n', bound.Findings.Select(finding => $"{finding.Place} {finding.Message} {finding.Remedy}")));
        bound.Batch!.Routes.Should().NotBeEmpty().And.OnlyContain(route => route.Steps.Count > 0);
    }
}

/// <summary>All that the plugins of the house bring, as the engine would hand it over.</summary>
internal static class HouseTrade
{
    public static Trade Trade { get; } = new()
    {
        Verbs = Brought(AllPlugins.Verbs, verb => verb.Name),
        Families = Brought(AllPlugins.Families, family => family.Name),
        Materials = Brought(AllPlugins.Materials, material => material.Name),
        MaskMaterials = Brought(AllPlugins.MaskMaterials, material => material.Name),
        CleanOuts = Brought(AllPlugins.CleanOuts, times => times.Source),
    };

    private static Sequence<Brought<T>> Brought<T>(IEnumerable<T> items, Func<T, string> name) =>
        items.OrderBy(name, StringComparer.Ordinal).Select(item => new Brought<T>("house", item)).ToSequence();
}
