using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Workflows;

/// <summary>What a file can say besides the work itself, for rules that would otherwise have to guess.</summary>
public sealed class SayingTests
{
    [Fact]
    public void A_step_has_air_protection_and_cleaning_of_its_own()
    {
        var step = Written.Route("""
            - coat: all
              with: rope bone
              by: airbrush
              climate: { air: 14 °C, humidity: 85 %, surface: 13 °C }
              protection: { extraction: no, flame: yes, rags: water-tin }
              clean-out: flush
            """).Steps[0];

        step.Climate.Should().Be(new Climate(new Temperature(14), new Share(0.85), new Temperature(13)));
        step.Protection.Should().Be(new Protection { Extraction = false, Flame = true, Rags = Rags.WaterTin });
        step.Work.CleanedOut.Should().Be(ToolCleaning.Flush);
    }

    [Fact]
    public void What_a_step_does_not_say_is_not_said()
    {
        var step = Written.Route("""
            - coat: all
              with: rope bone
              by: airbrush
            """).Steps[0];

        step.Climate.Should().BeNull();
        step.Protection.Should().Be(Protection.Unsaid);
        step.Work.CleanedOut.Should().Be(ToolCleaning.AsNeeded);
    }
}
