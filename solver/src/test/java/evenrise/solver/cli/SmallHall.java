package evenrise.solver.cli;

import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.plan.Plan;

/** A project of two loads as a file's text, and bare plans of it. */
final class SmallHall {
    static final String PROJECT = """
        {
          "format": "evenrise-project/1",
          "name": "Small hall",
          "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
          "panels": [{"id": "P1", "slots": 12, "rated_a": 225}],
          "board_types": [{"id": "eight", "outputs": 8, "start_delay_s": [0, 0.5], "step_s": [0.25, 0.5], "price": 0}],
          "boards": [{"id": "B1", "type": "eight", "panel": "P1"}],
          "loads": [
            {"id": "dsp", "role": "processing", "breaker_a": 20, "switched": false, "running_a": 10},
            {"id": "amp", "name": "Sub left", "role": "amplifier", "breaker_a": 32, "running_a": 20,
             "idle_a": 10, "inrush_peak_a": 100}
          ]
        }
        """;

    private SmallHall() {}

    /** Keeps every rule. */
    static Plan sound() {
        return aPlan().board("B1", 0.5, 0.25)
                .assignments(
                        anAssignment("dsp").at("P1", 1),
                        anAssignment("amp").at("P1", 3).on("B1", 2))
                .build();
    }

    /** The amplifier in another slot, on another output, and another start delay. */
    static Plan moved() {
        return aPlan().board("B1", 0, 0.25)
                .assignments(
                        anAssignment("dsp").at("P1", 1),
                        anAssignment("amp").at("P1", 5).on("B1", 1))
                .build();
    }

    /** Leaves the amplifier out. */
    static Plan broken() {
        return aPlan().board("B1", 0.5, 0.25)
                .assignments(anAssignment("dsp").at("P1", 1))
                .build();
    }
}
