using System.Text;

namespace Pipeline.Tests.EndToEnd;

/// <summary>No input makes the command hang, run out of memory or show its inside.</summary>
public sealed class HostileTests : IDisposable
{
    private readonly Bench bench = new();

    /// <summary>Files that are text but not a sound workflow: what is in them, and what must be said.</summary>
    public static TheoryData<string, string, string> Texts => new()
    {
        { "empty", "", "empty" },
        { "a number", "42", ":1:" },
        { "a list", "- a\n- b", ":1:" },
        { "deep nesting", new string('[', 100_000), ":1:" },
        { "deep mapping", string.Concat(Enumerable.Range(0, 2_000).Select(i => new string(' ', i) + "a:\n")), ":" },
        { "alias bomb", "a: &a [x, x, x, x, x, x, x, x, x]\n" + string.Concat("bcdefghij".Select((letter, i) => $"{letter}: &{letter} [{string.Join(',', Enumerable.Repeat($"*{(char)(letter - 1)}", 9))}]\n")), ":" },
        { "alias to itself", "batch: &a [*a]", ":" },
        { "a key twice", Files.Buoy + "\nbatch: Again", "twice" },
        { "a tab", Files.Buoy.Replace("    count: 2", "\tcount: 2"), ":" },
        { "too many units", Files.Buoy.Replace("count: 2", "count: 1000000000"), ":12:" },
        { "no number", Files.Buoy.Replace("count: 2", "count: many"), ":12:" },
        { "a size that is no number", Files.Buoy.Replace("9 cm²", "NaN cm²"), ":14:" },
        { "an endless size", Files.Buoy.Replace("9 cm²", "1e999 cm²"), ":14:" },
        { "a size below nothing", Files.Buoy.Replace("9 cm²", "-9 cm²"), ":14:" },
        { "text turned around", Files.Buoy.Replace("batch: Buoy", "batch: \"Bu\u202Eoy\""), ":1:" },
        { "a terminal's command", Files.Buoy.Replace("batch: Buoy", "batch: \"\\e[31mred\""), ":1:" },
        { "a scheme that follows itself", Files.Buoy.Replace("kits:", "schemes:\n  round:\n    areas: [hull]\n    route:\n      - follow: round\n        hull: hull\nkits:") + "\n          - follow: round\n            hull: all", ":" },
    };

    public void Dispose() => bench.Dispose();

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_file_that_is_no_sound_workflow_is_told_in_its_place(string what, string text, string said)
    {
        bench.File("odd.yaml", text);

        var ran = bench.Pipeline("check", "odd.yaml").ShowsNoTrace();

        ran.ExitCode.Should().Be(1, what);
        ran.Err.Should().Contain("odd.yaml:").And.Contain("error:").And.Contain(said, what);
        ran.Err.Should().NotContain("\u001b").And.NotContain("\u202E");
    }

    [Fact]
    public void Line_ends_of_other_systems_and_a_byte_order_mark_are_no_mistake()
    {
        bench.File("buoy.yaml", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Files.Buoy.ReplaceLineEndings("\r\n"))]);

        bench.Pipeline("check", "buoy.yaml").Should().Be(new Ran(0, "", ""));
    }

    [Fact]
    public void A_file_of_a_hundred_megabytes_is_refused_unread()
    {
        using (var file = File.Create(Path.Combine(bench.Folder, "huge.yaml")))
            file.SetLength(100L * 1024 * 1024);

        Refused("huge.yaml").Should().Contain("bytes");
    }

    [Fact]
    public void An_endless_stream_is_refused()
    {
        var ran = bench.Shell("yes 'batch: x' | $pipeline check - --name endless.yaml");

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().Contain("endless.yaml");
    }

    [Fact]
    public void A_program_is_refused()
    {
        File.Copy(Bench.Contract, Path.Combine(bench.Folder, "program.yaml"));

        Refused("program.yaml").Should().Contain("program.yaml:");
    }

    [Fact]
    public void A_pipe_nobody_writes_to_is_refused_at_once()
    {
        bench.Shell("mkfifo pipe.yaml");

        Refused("pipe.yaml").Should().Contain("a pipe or a device");
    }

    [Fact]
    public void A_device_without_an_end_is_refused() => Refused("/dev/zero").Should().Contain("/dev/zero");

    [Fact]
    public void A_name_that_a_terminal_would_obey_is_shown_harmless()
    {
        var ran = bench.Pipeline("check", "\u001b[31mred.yaml").ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().NotContain("\u001b");
    }

    private string Refused(string file)
    {
        var ran = bench.Pipeline("check", file).ShowsNoTrace();
        ran.ExitCode.Should().Be(2);
        ran.Out.Should().BeEmpty();
        return ran.Err;
    }
}
