package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Phase;
import evenrise.model.project.Scene;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * The connected load at factor 1 beside every scene's verdict: a point that keeps its rating, its neutral or its transformer
 * in the scenes alone rests on what keeps loads from running together, and is named with that.
 */
final class SceneBasisCheck implements ElectricalCheck {
    private static final String ID = "scene-basis";
    private static final String CLAUSE = "NEC 220.60; IEC 60364-1 clause 311 (from memory)";
    private static final double LAST_BITS = 1e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        if (layout.project().scenes().isEmpty()) {
            return;
        }
        for (Fed fed : Fed.all(layout)) {
            findings.made(ID, fed.node());
            lines(layout, fed, findings);
            neutral(layout, fed, findings);
        }
    }

    private static void lines(Layout layout, Fed fed, Remarks findings) {
        Map.Entry<Phase, Double> connected = layout.fullUse().running(fed.point()).byPhase().entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow();
        List<Double> inScenes = layout.sceneUses().stream()
                .map(use -> use.running(fed.point()).byPhase().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .max()
                        .orElse(0))
                .toList();
        findings.add(new Quantity(
                fed.node(),
                "connected load at factor 1, line " + connected.getKey(),
                connected.getValue(),
                "A",
                Optional.of(inScenes(layout, inScenes))));
        findings.add(new Quantity(fed.node(), "connected load at factor 1", connected.getValue(), "A")
                .atMost(heldTo(inScenes, fed.limits().continuousAmps()), CLAUSE));
        judge(
                layout,
                fed,
                new Limit("runs at", "of its rating", fed.limits().continuousAmps()),
                connected.getValue(),
                inScenes,
                findings);
        RatedTransformer.of(fed.point())
                .ifPresent(it -> judge(
                        layout,
                        fed,
                        new Limit("runs at", "by its transformer's rating", it.secondaryAmps()),
                        connected.getValue(),
                        inScenes,
                        findings));
    }

    private static void neutral(Layout layout, Fed fed, Remarks findings) {
        double connected = layout.fullUse().neutralAmps(fed.point());
        List<Double> inScenes = layout.sceneUses().stream()
                .map(use -> use.neutralAmps(fed.point()))
                .toList();
        findings.add(
                new Quantity(fed.node(), "neutral at factor 1", connected, "A", Optional.of(inScenes(layout, inScenes)))
                        .atMost(heldTo(inScenes, fed.limits().neutralAmps()), CLAUSE));
        judge(
                layout,
                fed,
                new Limit("has in its neutral", "there", fed.limits().neutralAmps()),
                connected,
                inScenes,
                findings);
    }

    /** A limit that is broken in a scene is another check's to tell. */
    private static OptionalDouble heldTo(List<Double> inScenes, double limit) {
        double most = inScenes.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        return most > limit + LAST_BITS ? OptionalDouble.empty() : OptionalDouble.of(limit);
    }

    private record Limit(String does, String of, double amps) {}

    /** Nothing where it keeps the limit at factor 1, or breaks it in a scene, which is another's to say. */
    private static void judge(
            Layout layout, Fed fed, Limit limit, double connected, List<Double> inScenes, Remarks findings) {
        double most = inScenes.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        if (connected <= limit.amps() + LAST_BITS || most > limit.amps() + LAST_BITS) {
            return;
        }
        List<Scene> bare = layout.project().scenes().stream()
                .filter(scene -> scene.basis().isEmpty())
                .toList();
        String bases = layout.project().scenes().stream()
                .filter(scene -> scene.basis().isPresent())
                .map(scene -> Phrase.quoted(scene.id()) + " (" + scene.basis().get() + ")")
                .collect(Collectors.joining(", "));
        findings.add(Remark.builder()
                .check(ID)
                .kind("kept-by-scenes-alone")
                .grade(bare.isEmpty() ? Grade.NOTE : Grade.EXCEEDS_RECOMMENDATION)
                .place(fed.node())
                .figure(connected)
                .limit(limit.amps())
                .unit("A")
                .clause(CLAUSE)
                .message(fed.label() + " " + limit.does() + " " + HUNDREDTHS.amps(connected, limit.amps())
                        + " with all that is connected in full use, allowed are "
                        + HUNDREDTHS.amps(limit.amps(), connected)
                        + " " + limit.of() + ", and at most " + HUNDREDTHS.amps(most, limit.amps())
                        + " in the scenes, which alone keep it"
                        + (bases.isEmpty() ? "" : ". They rest on: " + bases)
                        + (bare.isEmpty()
                                ? ""
                                : ". No basis states "
                                        + bare.stream()
                                                .map(scene -> Phrase.quoted(scene.id()))
                                                .collect(Collectors.joining(", "))))
                .cure(
                        bare.isEmpty()
                                ? "look whether that holds as long as the plant does"
                                : "say in the scene's basis what keeps those loads from running together, an interlock"
                                        + " for one, or take a larger rating")
                .build());
    }

    private static String inScenes(Layout layout, List<Double> amps) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < amps.size(); i++) {
            text.append(i == 0 ? "" : ", ")
                    .append(Phrase.quoted(layout.project().scenes().get(i).id()))
                    .append(' ')
                    .append(HUNDREDTHS.amps(amps.get(i)));
        }
        return text.toString();
    }
}
