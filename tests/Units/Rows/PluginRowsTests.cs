using Pipeline.Abstractions;
using Pipeline.Engine;
using Pipeline.Planning;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Tests.Units.Rows;

/// <summary>A plugin adds a family and rows about it, or changes a row of the house; the rules of the house honour them.</summary>
public sealed class PluginRowsTests
{
    private const string Invented = "invented for this test";

    [Theory]
    [InlineData("a family without rows is judged as the usual one of its carrier", "harbour ink", "enamel", 1.5, "E fat-over-lean")]
    [InlineData("and so is one under another", "acrylic lacquer", "harbour ink", 8.0, "W wet-hot-coat")]
    public void Without_rows(string @case, string coat, string under, double days, string said) =>
        Said(With(), coat, under, days).Should().Be(said, @case);

    [Theory]
    [InlineData("never", "harbour ink", "acrylic lacquer", Bearing.Never, Bearing.Never, "E fat-over-lean")]
    [InlineData("only over a barrier", "harbour ink", "acrylic lacquer", Bearing.Barrier, Bearing.Barrier, "W fat-over-lean")]
    [InlineData("misted only", "harbour ink", "acrylic lacquer", Bearing.Mist, Bearing.Mist, "W wet-hot-coat")]
    [InlineData("not before it has cured", "harbour ink", "acrylic lacquer", Bearing.Never, Bearing.Fine, "E fat-over-lean")]
    [InlineData("harmless, though the carrier says otherwise", "acrylic lacquer", "harbour ink", Bearing.Fine, Bearing.Fine, "")]
    [InlineData("never under a hot coat", "acrylic lacquer", "harbour ink", Bearing.Never, Bearing.Never, "E hot-over-soft")]
    [InlineData("a row of the house, changed", "stain", "acrylic lacquer", Bearing.Never, Bearing.Never, "E fat-over-lean")]
    public void With_a_row(string @case, string coat, string over, Bearing dry, Bearing cured, string said)
    {
        var row = new CoatOver { Coat = coat, Over = over, WhenDry = dry, WhenCured = cured, Source = Invented };

        Said(With(row), coat, over, days: 0.9).Should().Be(said, @case);
    }

    [Fact]
    public void A_family_like_another_shares_its_rows() =>
        Said(With(like: "acrylic lacquer"), "harbour ink", "waterborne acrylic", days: 8).Should().Be("W wet-hot-coat");

    [Fact]
    public void What_re_wets_it()
    {
        var tables = new Abstractions.Tables(new TableRows
        {
            Families = With().Families.Select(family => family.Item).ToSequence(),
            Compatibility = With().Compatibility.Select(row => row.Item).ToSequence(),
            Rewetting = With().Rewetting.Select(row => row.Item).Append(new Rewets { Liquid = Liquid.Water, Coat = "harbour ink", WhenDry = Bite.Strips, WhenCured = Bite.Lifts, Source = Invented }).ToSequence(),
        });
        var ink = tables.Family("harbour ink")!;
        tables.Rewetting(Liquid.Water, ink)!.WhenDry.Should().Be(Bite.Strips, "its own row");
        tables.Rewetting(Liquid.Isopropyl, ink)!.WhenDry.Should().Be(Bite.Strips, "as waterborne acrylic");
        tables.Rewetting(Liquid.AlkalineCleaner, ink).Should().BeNull("nobody knows");
    }

    /// <summary>The house with a plugin that brings a water-carried family and perhaps a row.</summary>
    private static Trade With(CoatOver? row = null, string? like = null)
    {
        var times = new DryingTable(DryingRange.Minutes(5, 15), DryingRange.Minutes(15, 30), DryingRange.Hours(1, 2), DryingRange.Hours(12, 24), DryingRange.Hours(24, 48), DryingRange.Days(3, 7));
        var ink = new Family { Name = "harbour ink", Carrier = like is null ? Carrier.Water : Carrier.Solvent, Like = like, Thin = times, Heavy = times, Source = Invented };
        var (trade, findings) = TradeJoining.Join(
        [
            ("House", "house", Check.Trade),
            ("Ink", "ink", new Trade
            {
                Families = [new("Ink", ink)],
                Compatibility = row is null ? [] : [new("Ink", row)],
            }),
        ]);
        findings.Should().BeEmpty();
        return trade;
    }

    private static string Said(Trade trade, string coat, string under, double days)
    {
        var file = CompatibilityTests.TwoCoats(coat, under, days * 24 * 60, "thin");
        var binding = Binder.Bind([Reader.Read(new SourceText("case.yaml", file)).Tree!], trade);
        var walked = Walk.Run(binding.Batch!, trade);
        return string.Join(", ", Sharpest.Of(walked.Findings.Concat(TimeJudge.JudgePins(walked)))
            .Where(finding => finding.Level > Level.Note)
            .Select(finding => $"{finding.Level.ToString()[0]} {finding.Rule}").Order(StringComparer.Ordinal));
    }
}
