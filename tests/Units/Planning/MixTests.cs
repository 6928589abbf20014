using Pipeline.Abstractions;
using Pipeline.Planning;
using static Pipeline.Tests.Units.Planning.RouteSteps;

namespace Pipeline.Tests.Units.Planning;

/// <summary>What is mixed in a sitting of several painters. A second mix never matches the first (common practice).</summary>
public class MixTests
{
    private static readonly Paint Brick = Mix("thin brick", Pot("brick", Waterborne), thinnerPercent: 40);

    [Theory]
    [InlineData("19:10", "19:40", null, "Ana for Rui")]
    [InlineData("19:40", "19:10", null, "Rui for Ana")]
    [InlineData("19:10", "19:40", 60, "Ana for Rui")]
    [InlineData("19:10", "19:40", 30, "Ana, Rui")] // stiff before Rui is done
    [InlineData("19:10", "20:30", 60, "Ana, Rui")]
    public void Those_who_sit_together_mix_once_while_it_keeps(string anas, string ruis, int? potLife, string said)
    {
        var paint = Brick with { PotLife = potLife is { } minutes ? new Drying(minutes) : null };
        var sittings = TwoCoats(paint, $"2026-11-30 {anas}", $"2026-11-30 {ruis}").Days.Single().Sittings;

        var mixes = sittings.SelectMany(sitting => sitting.Mixes.Select(mix => (sitting.Painter, Mix: mix))).ToList();
        string.Join(", ", mixes.Select(at => at.Mix.AlsoFor.IsEmpty ? at.Painter : $"{at.Painter} for {string.Join(" and ", at.Mix.AlsoFor)}")).Should().Be(said);
        foreach (var (painter, task) in sittings.SelectMany(sitting => sitting.Tasks.Where(task => task.Paint is not null).Select(task => (sitting.Painter, task))))
        {
            var mix = sittings.Single(sitting => sitting.Painter == (task.Paint!.MixedBy ?? painter)).Mixes[task.Paint!.FromMix!.Value];
            mix.Name.Should().Be("thin brick");
            (mix.UseBy?.ToInstant() ?? task.To.ToInstant()).Should().BeGreaterThanOrEqualTo(task.To.ToInstant(), "it is used before it stiffens");
        }
    }

    [Fact]
    public void It_holds_what_both_take_and_the_other_need_not_take_the_parts_out()
    {
        var plan = TwoCoats(Brick with { PotLife = null }, "2026-11-30 19:10", "2026-11-30 19:40");
        var (ana, rui) = (plan.Days.Single().Sittings[0], plan.Days.Single().Sittings[1]);

        var taken = ana.Tasks.Concat(rui.Tasks).Sum(task => task.Paint?.Millilitres ?? 0);
        ana.Mixes.Single().Millilitres.Should().BeInRange(taken, taken + 0.5);
        ana.TakeOut.Should().Contain("for thin brick: brick and thinner");
        rui.TakeOut.Should().NotContain(thing => thing.Contains("brick"));
        plan.Shopping.Single(item => item.Name == "brick").NeedMillilitres.Should().BeApproximately(ana.Mixes.Single().Millilitres * 0.6 * 1.2, 0.051);
    }

    [Fact]
    public void In_another_sitting_it_is_mixed_anew() =>
        TwoCoats(Brick with { PotLife = null }, "2026-11-30 19:10", "2026-12-01 19:10").Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Mixes)
            .Should().HaveCount(2).And.OnlyContain(mix => mix.AlsoFor.IsEmpty);

    private static Plan TwoCoats(Paint paint, string anas, string ruis) => Workshop.Evenings().Painter("Ana", "undercoat").Painter("Rui", "coat").Tool("airbrush", 2)
        .Model("Mill", 1, r => r.Spray(paint, minutes: 10, role: LayerRole.Undercoat).At(anas))
        .Model("Tower", 1, r => r.Spray(paint, minutes: 10).At(ruis)).Plan();
}
