namespace Pipeline.Tests.Units.Surfaces;

/// <summary>The demo files have nothing wrong with them.</summary>
public sealed class DemoTests
{
    [Theory]
    [InlineData("first.yaml")]
    [InlineData("tidewater.yaml")]
    [InlineData("harbour-fair.yaml")]
    public void A_careful_painter_has_nothing_to_say(string file) =>
        Check.Told(Check.File(File.ReadAllText(Path.Combine(Golden.Repository, "workflows", file)))).Should().BeEmpty();
}
