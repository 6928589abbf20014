namespace Pipeline.Tests.EndToEnd;

/// <summary>Exit codes, streams, and what the command says to a call it does not understand.</summary>
public sealed class CommandTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Nothing_to_complain_about_is_silence_and_zero()
    {
        bench.File("buoy.yaml", Files.Buoy);

        bench.Pipeline("check", "buoy.yaml").Should().Be(new Ran(0, "", ""));
    }

    [Fact]
    public void An_error_in_a_file_is_told_on_standard_error_with_its_place_and_one()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline("check", "buoy.yaml").ShowsNoTrace();

        ran.ExitCode.Should().Be(1);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().MatchRegex(@"(?m)^buoy\.yaml:19:\d+: error: .*slate undercoats").And.Contain("slate undercoat’");
    }

    [Fact]
    public void Findings_as_json_go_to_standard_output()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline("check", "--as", "json", "buoy.yaml");

        ran.ExitCode.Should().Be(1);
        ran.Err.Should().BeEmpty();
        Told.Of(ran.Out).Should().ContainSingle().Which.Line.Should().Be(19);
    }

    [Fact]
    public void Standard_input_is_read_under_the_name_given()
    {
        var ran = bench.PipelineReading(Files.Wrong, "check", "--as", "json", "-", "--name", "desk/buoy.yaml");

        Told.Of(ran.Out).Should().ContainSingle().Which.File.Should().Be("desk/buoy.yaml");
        bench.PipelineReading(Files.Buoy, "check", "-").Should().Be(new Ran(0, "", ""));
    }

    [Fact]
    public void A_plan_goes_to_standard_output()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday);

        ran.ExitCode.Should().Be(0, ran.Err);
        ran.Err.Should().BeEmpty();
        ran.Out.Should().Contain("18:00").And.Contain("slate undercoat").And.NotContain("\u001b");
        ran.Out.Split('\n').Should().OnlyContain(line => line.Length <= 80);
    }

    [Fact]
    public void A_plan_can_be_markdown_or_json()
    {
        bench.File("buoy.yaml", Files.Buoy);

        bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "md").Out.Should().StartWith("# ");
        var json = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--as", "json").Out;
        System.Text.Json.JsonDocument.Parse(json).RootElement.GetProperty("kind").GetString().Should().Be("plan");
    }

    [Fact]
    public void Out_writes_all_forms_and_prints_their_names()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--out", "week/one");

        ran.Should().Be(new Ran(0, "week/one/plan.txt\nweek/one/plan.md\nweek/one/plan.json\nweek/one/findings.json\n", ""));
        Directory.GetFiles(Path.Combine(bench.Folder, "week", "one")).Should().HaveCount(4);
    }

    [Fact]
    public void Out_into_what_is_no_folder_says_so()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday, "--out", "buoy.yaml").ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().StartWith("pipeline: cannot make the folder buoy.yaml:");
    }

    [Fact]
    public void Errors_in_the_file_leave_nothing_to_plan()
    {
        bench.File("buoy.yaml", Files.Wrong);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday);

        ran.ExitCode.Should().Be(1);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().Contain("buoy.yaml:19:");
    }

    [Fact]
    public void A_due_time_that_is_missed_still_gives_the_plan_and_three()
    {
        bench.File("buoy.yaml", Files.Late);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday);

        ran.ExitCode.Should().Be(3);
        ran.Out.Should().Contain("slate undercoat");
        ran.Err.Should().Contain("buoy.yaml:2:").And.Contain("error:");
    }

    [Fact]
    public void No_plan_gives_the_reasons_and_three()
    {
        bench.File("buoy.yaml", Files.Hopeless);

        var ran = bench.Pipeline("plan", "buoy.yaml", "--from", Files.Monday).ShowsNoTrace();

        ran.ExitCode.Should().Be(3);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().Contain("No plan").And.Contain("buoy.yaml:");
    }

    [Theory]
    [InlineData("chck", "'chck' is not known here; did you mean 'check'?")]
    [InlineData("", "say what to do: check, plan,")]
    [InlineData("check", "Required argument missing")]
    [InlineData("check nowhere.yaml", "cannot read nowhere.yaml: there is no such file")]
    [InlineData("check .", "cannot read .: it is a folder")]
    [InlineData("check x.yaml x.yaml", "the file x.yaml is given twice")]
    [InlineData("check - -", "standard input can be read only once")]
    [InlineData("plan x.yaml --effrt quick", "'--effrt' is not known here; did you mean '--effort'?")]
    [InlineData("plan x.yaml --as pdf", "'pdf'")]
    [InlineData("plan x.yaml --from tomorrow", "--from does not understand 'tomorrow'")]
    [InlineData("plan x.yaml --from 2026-02-30", "--from does not understand '2026-02-30'")]
    [InlineData("plan x.yaml --seed -4", "-4")]
    [InlineData("verbs undrcoat", "Did you mean undercoat?")]
    [InlineData("rules mask-lft-on", "there is no rule 'mask-lft-on'")]
    [InlineData("check x.yaml --plugins nowhere", "there is no folder of plugins nowhere")]
    [InlineData("check x.yaml --log-file nowhere/log", "cannot write the log")]
    [InlineData("host nowhere", "there is no such folder")]
    public void A_call_that_cannot_be_used_says_what_and_ends_with_two(string call, string said)
    {
        var ran = bench.Pipeline(call.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ShowsNoTrace();

        ran.ExitCode.Should().Be(2);
        ran.Out.Should().BeEmpty();
        ran.Err.Should().StartWith("pipeline: ").And.Contain(said);
        ran.Err.Split('\n').Should().HaveCountGreaterThan(2, "a hint follows");
    }

    [Fact]
    public void All_files_that_cannot_be_opened_are_told_at_once() =>
        bench.Pipeline("check", "one.yaml", "two.yaml").Err.Should().Contain("one.yaml").And.Contain("two.yaml");

    [Fact]
    public void A_file_that_may_not_be_read_says_so()
    {
        var ran = bench.Shell("echo 'batch: x' > shut.yaml; chmod 000 shut.yaml; $pipeline check shut.yaml");

        // root may read everything
        ran.Err.Should().Contain(Environment.UserName == "root" ? "shut.yaml:" : "you may not read it");
    }

    [Fact]
    public void Help_and_version_are_results()
    {
        bench.Pipeline("--help").ExitCode.Should().Be(0);
        bench.Pipeline("--help").Out.Should().Contain("check").And.Contain("host");
        bench.Pipeline("plan", "--help").Out.Should().Contain("--from");
        bench.Pipeline("--version").Out.Should().MatchRegex(@"^\d+\.\d+\.\d+\n$");
    }

    [Fact]
    public void Help_on_the_program_names_each_command_as_its_own_help_does()
    {
        var commands = bench.Pipeline("--help").Out.Split("Commands:\n")[1].Split("\n\n")[0].Split('\n').Where(line => line.StartsWith("  ") && line[2] != ' ').Select(line => line.Trim()).ToList();

        commands.Should().HaveCountGreaterThan(6);
        foreach (var command in commands)
            bench.Pipeline(command.Split(' ')[0], "--help").Out.Should().Contain($"Usage: pipeline {command} [OPTIONS]");
        bench.Pipeline("--log", "error", "--help").Out.Should().Be(bench.Pipeline("--help").Out);
    }

    [Fact]
    public void Verbs_and_rules_are_listed()
    {
        bench.Pipeline("verbs").Out.Should().MatchRegex("(?m)^undercoat +\\S");
        bench.Pipeline("verbs", "mask").Out.Should().StartWith("# mask\n").And.Contain("`using`");
        bench.Pipeline("rules").Out.Should().MatchRegex("(?m)^step-out-of-turn +\\S");
        bench.Pipeline("rules", "step-out-of-turn").Out.Should().StartWith("# step-out-of-turn\n");
    }

    [Fact]
    public void Tables_are_listed_and_shown_as_they_hold_for_a_file()
    {
        bench.Pipeline("tables").Out.Should().MatchRegex("(?m)^compatibility +\\S").And.MatchRegex("(?m)^clean-outs +\\S");
        bench.Pipeline("tables", "clean-outs").Out.Should().Contain("dark-to-light   4–6 min    [1]").And.EndWith("[1] common practice\n");
        bench.Pipeline("tables", "cleanouts").Err.Should().Contain("there is no table 'cleanouts'").And.Contain("Did you mean clean-outs?");

        var file = bench.File("own.yaml", File.ReadAllText(Bench.Workflow("first.yaml")) + "\nclean-outs: { dark-to-light: 2 min }\n");
        bench.Pipeline("tables", "clean-outs", "--for", file).Out.Should().Contain("dark-to-light   2 min      [2]").And.EndWith("[2] the file\n");

        var json = System.Text.Json.JsonDocument.Parse(bench.Pipeline("tables", "--as", "json").Out).RootElement.GetProperty("tables");
        json.EnumerateArray().Select(table => table.GetProperty("name").GetString()).Should().Contain(["families", "drying", "compatibility", "re-wetting", "mask-materials"]);
        json.EnumerateArray().SelectMany(table => table.GetProperty("rows").EnumerateArray()).Should().OnlyContain(row => row.GetProperty("source").GetString()!.Length > 0);
    }

    [Fact]
    public void The_schema_is_the_one_that_is_published()
    {
        var ran = bench.Pipeline("schema");

        ran.ExitCode.Should().Be(0);
        System.Text.Json.JsonDocument.Parse(ran.Out).RootElement.GetProperty("$schema").GetString().Should().Be("https://json-schema.org/draft/2020-12/schema");
        ran.Out.Should().Be(File.ReadAllText(Path.Combine(Bench.Root, "docs", "workflow.schema.json")));
    }

    [Fact]
    public void A_reader_that_leaves_early_is_no_mistake()
    {
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Shell($"$pipeline plan buoy.yaml --from '{Files.Monday}' --as json | head -c 10; echo \" ${{PIPESTATUS[0]}}\"");

        ran.Err.Should().BeEmpty();
        ran.Out.Should().EndWith(" 0\n");
    }

    [Fact]
    public void Output_that_cannot_be_written_is_said()
    {
        if (!File.Exists("/dev/full"))
            return;
        bench.File("buoy.yaml", Files.Buoy);

        var ran = bench.Shell($"$pipeline plan buoy.yaml --from '{Files.Monday}' > /dev/full");

        ran.ExitCode.Should().Be(2);
        ran.Err.Should().StartWith("pipeline: cannot write the output:");
        ran.ShowsNoTrace();
    }

    [Fact]
    public void A_file_handed_over_by_the_shell_is_read() =>
        bench.Shell("$pipeline check <(echo 'batch: [')").ShowsNoTrace().Err.Should().Contain(":1:");

    [Fact]
    public void The_log_is_quiet_unless_asked()
    {
        bench.File("buoy.yaml", Files.Buoy);

        bench.Pipeline("check", "buoy.yaml", "--log", "debug").Err.Should().Contain("CheckFiles given");
        bench.Pipeline("check", "buoy.yaml", "--log", "debug", "--log-file", "log.json").Err.Should().BeEmpty();
        File.ReadAllText(Path.Combine(bench.Folder, "log.json")).Should().StartWith("{\"@t\":");
    }

    [Fact]
    public async Task Ctrl_c_gives_the_best_plan_so_far_and_says_so()
    {
        using var process = bench.Start("plan", Bench.Workflow("harbour-fair.yaml"), "--from", Files.Monday, "--effort", "thorough", "--as", "json");
        process.StandardInput.Close();
        var plan = process.StandardOutput.ReadToEndAsync();
        var said = process.StandardError.ReadToEndAsync();

        // so much work is done only long after the first plan, and long before a thorough search is over
        while (!process.HasExited && process.TotalProcessorTime < TimeSpan.FromSeconds(8))
            await Task.Delay(100);
        process.HasExited.Should().BeFalse("a thorough search takes much longer than that");
        // what a shell starts in the background ignores Ctrl-C, and so do its children; being asked to end is the same wish
        var signal = IgnoresInterrupts(process.Id) ? "TERM" : "INT";
        bench.Shell(FormattableString.Invariant($"kill -{signal} {process.Id}"));
        await process.WaitForExitAsync();

        (await said).Should().Contain("pipeline: stopped as asked; this is the best plan so far");
        process.ExitCode.Should().Be(0);
        System.Text.Json.JsonDocument.Parse(await plan).RootElement.GetProperty("measure").GetProperty("stoppedEarly").GetBoolean().Should().BeTrue();
    }

    private static bool IgnoresInterrupts(int process)
    {
        var ignored = File.ReadLines(FormattableString.Invariant($"/proc/{process}/status")).Single(line => line.StartsWith("SigIgn:", StringComparison.Ordinal));
        return (Convert.ToUInt64(ignored["SigIgn:".Length..].Trim(), 16) & 2) != 0;
    }
}
