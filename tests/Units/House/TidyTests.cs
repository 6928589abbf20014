using System.Text.RegularExpressions;

namespace Pipeline.Tests.Units.House;

/// <summary>What every file keeps to.</summary>
public sealed partial class TidyTests
{
    private const int LongestFileLines = 400;

    private static readonly string[] Written =
        [".cs", ".csproj", ".props", ".targets", ".md", ".yaml", ".yml", ".json", ".sln", ".editorconfig", ".gitignore", ".gitattributes"];

    [Fact]
    public void No_source_file_is_longer_than_can_be_read_at_one_go()
    {
        var tooLong = Repository.Files(".cs").Select(file => (file, Lines: Repository.Lines(file).Length)).Where(each => each.Lines > LongestFileLines);

        tooLong.Should().BeEmpty();
    }

    [Fact]
    public void Lines_end_in_a_line_feed_alone_and_text_is_utf8()
    {
        foreach (var file in Repository.Files(Written).Where(file => !file.EndsWith(".sln", StringComparison.Ordinal) && !MeantToBeWrong(file)))
        {
            var bytes = File.ReadAllBytes(Path.Combine(Repository.Root, file));
            bytes.Should().NotContain((byte)'\r', file);
            var read = () => new System.Text.UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
            read.Should().NotThrow(file);
        }
    }

    [Fact]
    public void Nothing_is_left_to_be_done()
    {
        foreach (var file in Repository.Files(".cs", ".md", ".yaml").Where(file => !file.StartsWith("tests/Units/House/", StringComparison.Ordinal)))
        {
            var left = Repository.Lines(file).Where(line => LeftOver().IsMatch(line));
            left.Should().BeEmpty(file);
        }
    }

    [Theory]
    [InlineData(@"\bDateTime(Offset)?\.(UtcNow|Now|Today)\b", "the clock is an argument")]
    [InlineData(@"\bSystemClock\b", "the clock is an argument")]
    [InlineData(@"\bStopwatch\b", "budgets are counted in work, not in time")]
    [InlineData(@"\bEnvironment\.(TickCount|GetEnvironmentVariable|ProcessorCount|MachineName|CurrentDirectory)", "the same on every machine")]
    [InlineData(@"\bnew Random\(\)|\bRandom\.Shared\b|\bGuid\.NewGuid\b|\bRandomNumberGenerator\b", "chance comes from a seed")]
    [InlineData(@"(?<![\w.])Console\.", "the console belongs to the command")]
    [InlineData(@"(?<![\w.])(File|Directory|FileInfo|DirectoryInfo|FileStream)\.[A-Z]|new File(Stream|Info)\(", "the disk belongs to the engine")]
    [InlineData(@"\bThread\.Sleep\b|\bTask\.Delay\b|\bnew Timer\(", "nothing waits for the clock")]
    [InlineData(@"\bHttpClient\b|\bProcess\.Start\b", "nothing leaves the program")]
    [InlineData(@"\bCurrentCulture\b|\bCurrentUICulture\b|\bTimeZoneInfo\.Local\b", "the same everywhere")]
    public void The_pure_rooms_and_the_plugins_touch_nothing_outside(string pattern, string because)
    {
        var pure = Repository.PureRooms.Select(room => $"src/Pipeline.{room}/").Append("plugins/").ToArray();
        foreach (var file in Repository.Files(".cs").Where(file => pure.Any(room => file.StartsWith(room, StringComparison.Ordinal))))
        {
            var touching = Repository.Lines(file).Where(line => !IsComment(line) && Regex.IsMatch(line, pattern));
            touching.Should().BeEmpty($"{because} ({file})");
        }
    }

    [Fact]
    public void No_type_is_named_for_want_of_a_name()
    {
        foreach (var file in Repository.Files(".cs").Where(file => file.StartsWith("src/", StringComparison.Ordinal) || file.StartsWith("plugins/", StringComparison.Ordinal)))
            Repository.Lines(file).Where(line => VagueType().IsMatch(line)).Should().BeEmpty(file);
    }

    [Fact]
    public void No_folder_is_a_drawer_for_odds_and_ends() =>
        Repository.Files().SelectMany(file => file.Split('/')[..^1]).Distinct()
            .Should().NotContain(["Helpers", "Utils", "Utilities", "Common", "Misc", "Models", "Services", "Managers"]);

    [Fact]
    public void A_namespace_is_opened_for_the_whole_file() =>
        Repository.Files(".cs").Where(file => Repository.Lines(file).Any(line => BlockNamespace().IsMatch(line))).Should().BeEmpty();

    private static bool IsComment(string line) => line.TrimStart().StartsWith("//", StringComparison.Ordinal);

    /// <summary>Files that try how the program takes what is wrong.</summary>
    private static bool MeantToBeWrong(string file) => file.StartsWith("workflows/broken/", StringComparison.Ordinal) || file.Contains("/Hostile/", StringComparison.Ordinal);

    [GeneratedRegex(@"\b(TODO|FIXME|HACK|XXX)\b|NotImplementedException")]
    private static partial Regex LeftOver();

    [GeneratedRegex(@"\b(class|record|struct|interface)\s+\w*(Manager|Helper|Helpers|Util|Utils|Impl)\b")]
    private static partial Regex VagueType();

    [GeneratedRegex(@"^namespace [\w.]+\s*(\{|$)")]
    private static partial Regex BlockNamespace();
}
