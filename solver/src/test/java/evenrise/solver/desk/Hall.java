package evenrise.solver.desk;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.StandIns;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** A hall of two panels, two boards and five loads, and a plan of it that keeps every hard rule. */
final class Hall {
    static final String PROJECT = """
        {
          "format": "evenrise-project/1",
          "name": "Small hall",
          "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
          "panels": [{"id": "P1", "slots": 12, "rated_a": 225}, {"id": "P2", "slots": 12, "rated_a": 225}],
          "board_types": [{"id": "four", "outputs": 4, "start_delay_s": [0, 4], "step_s": [0.5, 1], "price": 0}],
          "boards": [{"id": "B1", "type": "four", "panel": "P1"}, {"id": "B2", "type": "four", "panel": "P2"}],
          "loads": [
            {"id": "dsp", "role": "processing", "breaker_a": 20, "running_a": 3},
            {"id": "amp-1", "role": "amplifier", "breaker_a": 20, "running_a": 8, "inrush_peak_a": 80},
            {"id": "amp-2", "role": "amplifier", "breaker_a": 20, "running_a": 9, "inrush_peak_a": 90},
            {"id": "hoist", "role": "auxiliary", "breaker_a": 32, "poles": 3, "running_a": 12, "switched": false},
            {"id": "lamp", "role": "auxiliary", "breaker_a": 16, "running_a": 2}
          ]
        }
        """;

    static final String PLAN = """
        {
          "format": "evenrise-plan/1",
          "boards": [{"id": "B1", "start_delay_s": 0, "step_s": 0.5}, {"id": "B2", "start_delay_s": 4, "step_s": 0.5}],
          "assignments": [
            {"load": "dsp", "panel": "P1", "slot": 1, "phases": ["A"], "board": "B1", "output": 1, "on_s": 0, "off_s": 4.5},
            {"load": "lamp", "panel": "P1", "slot": 3, "phases": ["B"], "board": "B1", "output": 2, "on_s": 0.5, "off_s": 4},
            {"load": "hoist", "panel": "P1", "slot": 2, "phases": ["A", "B", "C"], "board": null, "output": null,
             "on_s": null, "off_s": null},
            {"load": "amp-1", "panel": "P2", "slot": 1, "phases": ["A"], "board": "B2", "output": 1, "on_s": 4, "off_s": 0.5},
            {"load": "amp-2", "panel": "P2", "slot": 5, "phases": ["C"], "board": "B2", "output": 2, "on_s": 4.5, "off_s": 0}
          ]
        }
        """;

    static final Jobs JOBS = StandIns.withoutProofs();

    private Hall() {}

    static Project project() {
        return read().value().orElseThrow();
    }

    private static Reading<Project> read() {
        return ProjectFile.read(PROJECT.getBytes(StandardCharsets.UTF_8), "project.json");
    }

    static DeskState state() {
        Plan plan = PlanFile.read(PLAN.getBytes(StandardCharsets.UTF_8), "plan.json")
                .value()
                .orElseThrow();
        return new DeskState(project(), read().notes(), PlanFinisher.timed(project(), plan));
    }

    static Layout layout() {
        return Layout.of(project(), state().plan());
    }

    /** Both files in a folder. */
    static Path in(Path folder) {
        try {
            Files.writeString(folder.resolve("project.json"), PROJECT);
            Files.writeString(folder.resolve("project.plan.json"), PLAN);
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A desk on a folder without a server, whose files nobody keeps. */
    static DeskWork work(Path folder) {
        DeskFiles files = DeskFiles.of(folder);
        return new DeskWork(new Desk(files, Optional.of(state()), List.of()), files, JOBS);
    }

    /** Everything that can be asked there. */
    static DeskRoutes routes(Path folder) {
        return routes(desk(folder), folder);
    }

    static Desk desk(Path folder) {
        return new Desk(DeskFiles.of(folder), Optional.of(state()), List.of());
    }

    static DeskRoutes routes(Desk desk, Path folder) {
        DeskFiles files = DeskFiles.of(folder);
        return new DeskRoutes(DeskParts.of(new DeskWork(desk, files, JOBS), desk, files, JOBS));
    }

    static DeskRequests.Move toSlot(String load, String panel, int slot) {
        return new DeskRequests.Move(
                load,
                Optional.of(panel),
                OptionalInt.of(slot),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty());
    }

    static DeskRequests.Move toOutput(String load, String board, int output) {
        return new DeskRequests.Move(
                load,
                Optional.empty(),
                OptionalInt.empty(),
                Optional.of(board),
                OptionalInt.of(output),
                OptionalDouble.empty());
    }

    static DeskRequests.Move away(String load) {
        return new DeskRequests.Move(
                load,
                Optional.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty());
    }
}
