package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One panel of twelve slots; a processor of 10 A and an amplifier of 20 A that peaks at 100 A. */
class WhatIfCommandTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path plan;

    @BeforeEach
    void planTheProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        plan = folder.resolve("hall.plan.json");
        new Shell(SmallHall.sound()).run("plan", project.toString());
    }

    private Shell.Result whatIf(String... rest) {
        List<String> arguments =
                new ArrayList<>(List.of("whatif", project.toString(), plan.toString(), "--moves", "500"));
        arguments.addAll(List.of(rest));
        return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
    }

    @Test
    void saysThatAPlanExistsAndWhatMoves() {
        Shell.Result result = whatIf("--add", "5:2");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .contains("Supposed: with one load more of 5.0 A on 2 poles")
                .contains("A plan that keeps every rule was found.", "0 breakers and")
                .contains("The inrush of a load that is added is taken as none: every peak")
                .containsPattern("Peak inrush at nominal voltage +100\\.00 ");
    }

    /** The amplifier alone peaks at 100 A: no plan keeps 90. */
    @Test
    void saysWhatNoPlanCanKeep() {
        Shell.Result result = whatIf("--limit", "supply=90");

        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
        assertThat(result.out()).contains("inrush-limit").doesNotContain("is taken as none");
    }

    @Test
    void refusesWhatCannotBeSupposed() {
        assertThat(whatIf("--without", "P1").err()).contains("the project has one panel only");
        assertThat(whatIf("--without", "P9").code()).isEqualTo(ExitCode.USAGE);
        assertThat(whatIf().err()).contains("nothing is supposed");
        assertThat(whatIf("--add", "much").err()).contains("--add is 'much', expected such as 16");
    }
}
