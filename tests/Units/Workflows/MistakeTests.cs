namespace Pipeline.Tests.Units.Workflows;

/// <summary>Each line that ends in <c>#! …</c> must give that finding, and nothing else may be found.</summary>
public class MistakeTests
{
    [Fact]
    public void All_mistakes_are_told_in_one_go() => Written.Says("""
        batch: Crew
        deu: 2026-12-12 18:00 #! ‘deu’ is no key of a workflow. Did you mean ‘due’?
        pace: slow #! ‘slow’ is none of the choices. Write comfortable or brisk.
        aim: [finish soon, few chages] #! few changes
        bench:
          zone: Europe/Lisbom #! Did you mean ‘Europe/Lisbon’?
          sittings:
            - { days: mon-fry, from: 19:00, to: 22:00 } #! ‘mon-fry’ is not a weekday.
            - { days: sat, from: 25:00, to: 22 } #! A day has no 25:00 #! ‘22’ is not a time of day.
            - { from: 10:00, to: 10:00 } #! has no ‘days’ #! ends when it begins
          away: [2026-02-30, 2026-12-10..2026-12-08] #! There is no day 30 in 2026-02 #! ends before it begins
          painters: 0 #! ‘0’ is not from 1 to 20.
          tools: { airbrush: two } #! does not begin with a number
          climate: { air: 19, humidity: 55 } #! ‘19’ has no unit. #! ‘55’ has no unit.
          most-per-day: 3 #! ‘3’ has no unit.
        paints:
          hull black: { family: acrylic laquer, colour: "#0c0d1" } #! Did you mean ‘acrylic lacquer’? #! is not a colour
          rope bone: { sheen: shiny } #! has no ‘family’ #! Write matt, satin, gloss or mirror.
          bright: { family: enamel, drying: 24 h } #! does not say which state is reached by then
          clear: { family: enamel, stock: 7 ml., metallic: perhaps } #! ‘ml.’ is no unit of volume. #! neither yes nor no
        mixes:
          old brass: #! has no ‘parts’
            thinner: { with: thinner, share: 40 %, of: pint } #! ‘pint’ is none of the choices.
          grey: { parts: { rope bones: 1, bright: -1 } } #! Did you mean ‘rope bone’? #! less than nothing
        kits:
          - kit: Divers
            models:
              - model: Diver
                count: 1000000000 #! is not from 1 to 9,999
                material: rosin #! Did you mean ‘resin’?
                areas: { suit: 30, helmet: NaN cm², glass: -1 cm², hose: 1e400 cm², boots: 2,5 cm² } #! ‘30’ has no unit. Write a size such as 30 cm² #! NaN #! less than nothing #! ‘1e400 cm²’ does not begin with a number #! The comma in ‘2,5 cm²’ parts two entries.
                route:
                  - clean: siut #! Did you mean ‘suit’?
                  - coat: suit
                    wiht: hull black #! ‘wiht’ is no key of a ‘coat’ step. Did you mean ‘with’?
                  - coat: suit #! This ‘coat’ step has no ‘with’. Add ‘with: ’ and the name of a paint or mix.
                  - maks: glass #! There is no verb called ‘maks’. Did you mean ‘mask’?
                    as: lens
                  - unmask: lens
        """);

    [Fact]
    public void A_cup_holds_at_least_half_a_millilitre() => Written.Says("""
        batch: Crew
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
          cup: 0.001 mL #! No airbrush cup holds so little. Write what the cup holds, 0.5 mL or more, such as 7 mL.
        kits:
          - kit: Divers
            models: [{ model: Diver, material: resin, areas: { suit: 30 cm² }, route: [{ clean: all }] }]
        """);

    [Fact]
    public void A_quantity_without_its_unit_is_refused_wherever_it_stands() => Written.Says("""
        batch: Crew
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
          slack: 15 #! ‘15’ has no unit.
          cup: 7 #! ‘7’ has no unit.
          most-per-day: 90 #! ‘90’ has no unit.
          climate: { air: 19, surface: 18, humidity: 55 } #! ‘19’ has no unit. #! ‘18’ has no unit. #! ‘55’ has no unit.
        paints:
          levelling thinner: { family: acrylic lacquer }
          hull black: { family: acrylic lacquer, stock: 40, drying: { recoatable: 20-40 } } #! ‘40’ has no unit. #! ‘40’ has no unit.
        mixes:
          thin black: { parts: { hull black: 1 }, thinner: { with: levelling thinner, share: 40, of: mix } } #! ‘40’ has no unit.
        kits:
          - kit: Divers
            models:
              - model: Diver
                material: resin
                areas: { suit: 30 } #! ‘30’ has no unit.
                route:
                  - clean: all
                    minutes: 12
                    set-up: 5 #! ‘5’ has no unit.
                    put-away: 5 #! ‘5’ has no unit.
                    unattended: 60 #! ‘60’ has no unit.
        """);

    [Fact]
    public void Who_comes_when() => Written.Says("""
        batch: Crew
        bench:
          zone: Europe/Lisbon
          sittings: [{ days: mon-fri, from: 19:00, to: 22:00 }]
          painters:
            - Ana
            - { painter: Rui, does: [caot], days: [satt, 2026-02-30, sun] } #! Did you mean ‘coat’? #! ‘satt’ is not a weekday. #! There is no day 30 in 2026-02
            - { painter: Ana } #! The painter ‘Ana’ is given twice.
            - { dose: [coat] } #! ‘dose’ is no key of a painter. Did you mean ‘does’? #! has no ‘painter’
        kits:
          - kit: Divers
            models:
              - model: Diver
                material: resin
                areas: { suit: 30 cm² }
                route:
                  - clean: all
                    in: curing lamp #! There is no place or machine called ‘curing lamp’.
                    pace: quick #! ‘quick’ is none of the choices. Write comfortable or brisk.
        """);

    [Fact]
    public void A_step_has_one_verb() => Written.RouteSays("""
        - coat: suit
          with: harbour black
          clean: helmet #! This step has two verbs, ‘coat’ and ‘clean’.
        - as: nothing #! This step has no verb.
        - just words #! Here stands a text.
        - throwing: suit #! The verb ‘throwing’ of the plugin ‘faulty’ failed at this step: InvalidOperationException: the plugin's own mistake
        - unsayable: suit #! of the plugin ‘faulty’ cannot be used: its particular ‘When’ is of the type DateTime
        - coat: suit
          with: harbour black
          coats: 0 #! No coats at all
        - coat: suit
          with: harbour black
          coats: 1.5 #! ‘1.5’ is not a whole number.
        - coat:
          with: harbour black
        """.Replace("- coat:\n", "- coat: #! Nothing is written here.\n"));

    [Fact]
    public void What_fits_a_step_is_said() => Written.RouteSays("""
        - coat: suit
          with: harbour block #! Did you mean ‘harbour black’?
          by: airbursh #! Write brush, airbrush, aerosol, sponge or hand.
          minutes: 1 kg #! is no unit of time
          drying: 12 h
          after: first #! There is no step called ‘first’.
          allow: { mask-to-long: tested, mask-too-long: } #! Did you mean ‘mask-too-long’? #! Nothing is written here. Write the reason
        - coat: suit
          with: harbour black
          drying: 12 h #! Name the state: drying: { recoatable: 12 h }; possible are touch-dry, recoatable, handleable, mask-safe, wash-safe, cured.
        - clean: suit
          drying: 12 h #! leaves nothing that dries
        - coat: suit
          with: harbour black
          drying: { recoatable: 30 h, touch-dry: 50 h } #! A coat is touch-dry before it is recoatable, and 50 h is longer than 30 h.
        - coat: suit
          with: harbour black
          drying: { touch-dry: 20-60 min, recoatable: 30 min, handleable: 20 min, mask-safe: 60-70 h, cured: 50 h } #! A coat is mask-safe before it is cured, and 60–70 h is longer than 50 h.
        - glue: suit
          drying: { cured: 12 h } #! has no drying states
        - mask: glass
          using: low tack tap #! Did you mean ‘low-tack tape’?
          over: nothing #! There is no mask called ‘nothing’.
        - join: helmet #! ‘helmet’ is an area of ‘Diver’, not a part.
        - unmask: helmt #! Did you mean ‘helmet’?
        - clean: suit
          as: bath
          after: late #! stands further down
        - clean: suit
          as: dip
          after: dip #! The step ‘dip’ cannot come after itself.
        - unmask: bath #! The step ‘bath’ puts no mask on.
        - clean: suit
          as: late
        - clean: helmet
          as: bath #! Two steps are called ‘bath’.
        """);

    [Fact]
    public void A_time_that_the_clocks_skip_cannot_be_fixed_for_a_step() => Written.RouteSays("""
        - clean: suit
          at: 2026-03-29 01:30 #! There is no 01:30 on 2026-03-29 in Europe/Lisbon: the clocks go forward over it.
        - clean: suit
          at: 2026-12-05 #! says the day but not the time of day
        - clean: suit
          at: tomorrow #! is not a date
        """);

    [Fact]
    public void A_scheme_is_checked_by_itself_and_where_it_is_followed() => Written.RouteSays(
        """
        - follow: grund #! There is no scheme called ‘grund’. Did you mean ‘ground’?
        - follow: ground
          mettal: suit #! Did you mean ‘metal’?
          black: harbour black
        - follow: ground #! The scheme ‘ground’ is followed, but here it has no ‘metal’. Add ‘metal: ’ and the areas it stands for.
          black: harbour black
        - follow: ground
          metal: siut #! Did you mean ‘suit’?
          black: harbour block #! Did you mean ‘harbour black’?
        - follow: ground
          metal: suit
          black: harbour black
          coat: suit #! This step follows a scheme and has the verb ‘coat’, too.
        """,
        """
        schemes:
          ground:
            areas: [metal]
            paints: [black]
            route:
              - coat: metal
                with: black
          never followed:
            areas: [metal, metal, after] #! The placeholder ‘metal’ is given twice. #! has a key ‘after’ already
            route:
              - coat: helmet #! There is no area in the scheme ‘never followed’ called ‘helmet’.
                with: blakc #! There is no paint or mix called ‘blakc’.
        """);

    [Fact]
    public void A_scheme_that_follows_itself_is_named_with_its_whole_ring() => Written.RouteSays(
        """
        - follow: one
        """,
        """
        schemes:
          one:
            route:
              - follow: two
          two:
            route:
              - clean: all
              - follow: three
          three:
            route:
              - follow: one #! Schemes follow each other in a ring: ‘one’ → ‘two’ → ‘three’ → ‘one’.
          own:
            route:
              - follow: own #! The scheme ‘own’ follows itself.
        """);

    [Fact]
    public void A_mix_that_holds_itself_is_named_with_its_whole_ring() => Written.RouteSays(
        """
        - clean: all
        """,
        """
        mixes:
          one: { parts: { two: 1 } }
          two: { parts: { rope bone: 1, one: 1 } } #! Mixes hold each other in a ring: ‘one’ → ‘two’ → ‘one’.
          own: { parts: { own: 1 } } #! The mix ‘own’ holds itself.
          same: { parts: { rope bone: 1 }, family: enamel } #! All parts are waterborne acrylic, so the mix cannot be enamel.
          rope bone: { parts: { harbour black: 1 } } #! The paint or mix ‘rope bone’ is given twice.
          whole: { parts: { rope bone: 1 }, thinner: { with: water, share: 100 %, of: mix } } #! All of the mix would be thinner.
          half: { parts: { rope bone: 1 }, thinner: { share: 140 %, off: mix } } #! has no ‘with’ #! more than the whole #! Did you mean ‘of’?
        """);

    [Fact]
    public void A_mix_of_families_that_go_together_is_asked_how_it_behaves_and_one_that_curdles_is_left_to_the_rules() => Written.Says("""
        batch: Crew
        bench: { zone: UTC, sittings: [{ days: daily, from: 19:00, to: 24:00 }] }
        families:
          quay paint: { like: waterborne acrylic }
        paints:
          rope bone: { family: waterborne acrylic }
          quay bone: { family: quay paint }
          harbour black: { family: acrylic lacquer }
        mixes:
          odd: { parts: { rope bone: 1, quay bone: 1 } } #! of different families: waterborne acrylic and quay paint
          curd: { parts: { rope bone: 1, harbour black: 1 } }
        kits: [{ kit: K, models: [{ model: M, material: resin, areas: { a: tiny }, route: [{ clean: all }] }] }]
        """);

    [Fact]
    public void An_unquoted_colour_is_a_comment_and_is_said_to_be_one()
    {
        Written.Says(Written.WithRoute("- clean: all").Replace("family: waterborne acrylic }", "family: waterborne acrylic, colour: #cdbf9f }")
            .Replace("rope bone: {", "rope bone: {", StringComparison.Ordinal)
            .Replace("colour: #cdbf9f }", "colour: #cdbf9f } #! A ‘#’ without quotes begins a comment", StringComparison.Ordinal));
        Written.Says("""
            batch: Crew
            bench: { zone: UTC, sittings: [{ days: daily, from: 19:00, to: 24:00 }] }
            paints:
              rope bone:
                family: enamel
                colour: #! a ‘#’ without quotes begins a comment
            kits: [{ kit: K, models: [{ model: M, material: resin, areas: { a: tiny }, route: [{ clean: all }] }] }]
            """);
    }

    [Fact]
    public void Families_can_be_changed_but_not_guessed() => Written.RouteSays(
        """
        - clean: all
        """,
        """
        families:
          enamle: { pot-life: 2 h } #! Did you mean ‘enamel’?
          enamel: { like: acrylic lacquer, coldest: 8 } #! is a family of the trade already #! ‘8’ has no unit.
          own: { like: enamle } #! Did you mean ‘enamel’?
          acrylic lacquer: { dryin: { cured: 1 d } } #! Did you mean ‘drying’?
        """);

    [Fact]
    public void Everything_that_must_be_there_is_asked_for() => Written.Says("""
        due: 2026-12-12 18:00 #! has no ‘batch’ #! has no ‘bench’
        kits: [{ models: [{ count: 2 }] }] #! has no ‘kit’ #! has no ‘model’ #! has no ‘areas’ #! has no ‘material’ #! has no ‘route’
        """);

    [Fact]
    public void A_file_that_is_no_mapping_is_said_to_be_none()
    {
        Written.Says("- batch #! The file holds a list, not keys with values.");
        Written.Says("batch #! The file holds a text, not keys with values.");
    }

    [Fact]
    public void Names_that_cannot_be_told_apart_or_mean_something_else_are_refused() => Written.Says("""
        batch: "Crew\tone" #! holds a tab
        bench: { zone: UTC, sittings: [{ days: daily, from: 19:00, to: 24:00 }] }
        kits:
          - kit: Divers
            models:
              - model: Diver
                material: resin
                areas: { all: 1 cm², suit: 0 cm² } #! ‘all’ stands for every area #! has nothing to paint
                route:
                  - clean: all
          - kit: Divers #! Two kits are called ‘Divers’.
            models:
              - model: Diver #! Two models are called ‘Diver’.
                material: resin
                parts:
                  body: { areas: { suit: 1 cm² } }
                  arm: { area: { hand: 1 cm² }, areas: { suit: 1 cm² } } #! Did you mean ‘areas’? #! Two areas of the model are called ‘suit’.
                route:
                  - clean: all
        """);

    [Fact]
    public void An_order_beyond_all_painting_is_refused() => Written.Says($$"""
        batch: Crew
        bench: { zone: UTC, sittings: [{ days: daily, from: 19:00, to: 24:00 }] }
        schemes:
          much: { route: [{{string.Join(", ", Enumerable.Repeat("{ clean: all }", 101))}}] }
        kits:
          - kit: Divers
            models:
              - model: Diver
                count: 9999 #! the batch has more than 1,000,000 steps to do, unit by unit
                material: resin
                areas: { suit: 1 cm² }
                route:
                  - follow: much
        """);
}
