package evenrise.solver.document;

import java.util.Optional;

/** How a circuit is switched, in words of a language. */
public final class SwitchingWords {
    private final SheetWords words;

    public SwitchingWords(SheetWords words) {
        this.words = words;
    }

    /** Which lead switches it. */
    public String control(PlannedCircuit circuit) {
        return control(circuit, "label.output");
    }

    /** The same in few letters: {@code B1/3}. */
    String shortControl(PlannedCircuit circuit) {
        return control(circuit, "slot.output");
    }

    private String control(PlannedCircuit circuit, String output) {
        Optional<String> with = circuit.comesWith().map(lead -> words.say("label.with", lead));
        if (circuit.isWithoutOutput()) {
            return with.map(each -> each + "; ").orElse("") + words.say("label.no-output");
        }
        return with.orElseGet(() -> circuit.onSeconds().isPresent()
                ? words.say(
                        output,
                        circuit.board().orElse(""),
                        circuit.output().isPresent()
                                ? String.valueOf(circuit.output().getAsInt())
                                : "")
                : words.say("slot.always-on"));
    }

    /** How its breaker is switched, and what is behind it; empty for a switched breaker by itself. */
    public String contactor(PlannedCircuit circuit) {
        if (circuit.comesWith().isPresent()) {
            return words.say("slot.behind", circuit.comesWith().get());
        }
        if (!circuit.byContactor()) {
            return "";
        }
        return circuit.carries().isEmpty()
                ? words.say("landing.contactor")
                : words.say("landing.contactor-with", String.join(", ", circuit.carries()));
    }
}
