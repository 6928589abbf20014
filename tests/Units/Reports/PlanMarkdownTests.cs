using Pipeline.Reports;

namespace Pipeline.Tests.Units.Reports;

public sealed class PlanMarkdownTests
{
    [Fact]
    public void Two_weeks() =>
        Golden.Of("tests/Units/Reports/golden/two-weeks.md").ShouldBe(PlanMarkdown.Render(TwoWeeks.Plan));
}
