using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

public sealed class PlanTextTests
{
    [Fact]
    public void Two_weeks_at_eighty_columns() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.txt").ShouldBe(PlanText.Render(TwoWeeks.Plan, TextStyle.Plain));

    [Fact]
    public void Two_weeks_on_a_drawing_terminal() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.terminal.txt")
            .ShouldBe(PlanText.Render(TwoWeeks.Plan, new TextStyle { Colour = true, Drawn = true }).Replace("\u001b", "␛", StringComparison.Ordinal));
}
