package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/** Inputs that somebody thought of, each at an edge of what the files allow. */
final class HardCases {
    private static final ObjectMapper JSON = new ObjectMapper();
    /** @param plan what becomes of our own plan on the way */
    record Case(String project, UnaryOperator<String> plan, String script) {}

    private final Map<String, Case> cases = new LinkedHashMap<>();

    static Map<String, Case> all() {
        HardCases it = new HardCases();
        it.projects();
        it.figures();
        it.plansAndScripts();
        return it.cases;
    }

    private void projects() {
        project("one panel of the most slots", root -> panel(root).put("slots", 1000));
        project("one load", root -> loads(root).remove(1).size());
        project("one load in a panel of the most slots", root -> {
            panel(root).put("slots", 1000);
            only(root, 1);
        });
        project("no loads", root -> loads(root).removeAll());
        project("no panels", root -> ((ArrayNode) root.get("panels")).removeAll());
        project("no boards", root -> {
            ((ArrayNode) root.get("boards")).removeAll();
            ((ArrayNode) root.get("board_types")).removeAll();
        });
        project("nothing at all", root -> {
            for (String each : new String[] {"panels", "boards", "board_types", "loads"}) {
                ((ArrayNode) root.get(each)).removeAll();
            }
        });
        project(
                "boards without an output in use",
                root -> loads(root).forEach(load -> {
                    ((ObjectNode) load).put("switched", false);
                }));
        project("a chain of boards without an output in use", root -> {
            ArrayNode boards = (ArrayNode) root.get("boards");
            for (int i = 2; i < 12; i++) {
                boards.addObject()
                        .put("id", "B" + i)
                        .put("type", "eight")
                        .put("panel", "P1")
                        .put("after", "B" + (i - 1));
            }
        });
        project("groups of none and of all", root -> {
            ArrayNode groups = root.putArray("shutdown_groups");
            groups.addObject().put("id", "none").put("on_emergency", "drop").put("same_panel", true);
            groups.addObject().put("id", "all").put("on_emergency", "drop").put("same_panel", true);
            loads(root).forEach(load -> ((ObjectNode) load).put("shutdown_group", "all"));
        });
        project(
                "no slot is free",
                root -> IntStream.rangeClosed(1, 12)
                        .forEach(slot -> reserved(root).add(slot)));
        project(
                "no place for three poles",
                root -> IntStream.of(3, 4, 9, 10).forEach(slot -> reserved(root).add(slot)));
        project("every load apart from every other", root -> {
            for (JsonNode one : loads(root)) {
                ArrayNode apart = ((ObjectNode) one).putArray("apart_from");
                loads(root).forEach(other -> {
                    if (other != one) {
                        apart.add(other.get("id").asText());
                    }
                });
            }
        });
        project("loads that wait for each other", root -> {
            load(root, 0).putArray("comes_after").add("amp");
            load(root, 1).putArray("comes_after").add("dsp");
        });
        project("many equal loads", root -> {
            panel(root).put("slots", 400);
            ObjectNode amp = load(root, 1);
            for (int i = 0; i < 60; i++) {
                loads(root).add(amp.deepCopy().put("id", "amp-" + i));
            }
            ArrayNode boards = (ArrayNode) root.get("boards");
            for (int i = 2; i < 10; i++) {
                boards.addObject().put("id", "B" + i).put("type", "eight").put("panel", "P1");
            }
        });
        project("long names in every place", root -> {
            String name = "Långt namn ".repeat(300).strip();
            root.put("name", name);
            panel(root).put("id", name + "P");
            ((ObjectNode) root.get("boards").get(0)).put("id", name + "B").put("panel", name + "P");
            loads(root)
                    .forEach(load -> ((ObjectNode) load)
                            .put("id", name + load.get("id").asText())
                            .put("name", name));
        });
        project("one long word in every place", root -> {
            String name = "x".repeat(5000);
            root.put("name", name);
            panel(root).put("id", name + "P");
            ((ObjectNode) root.get("boards").get(0)).put("id", name + "B").put("panel", name + "P");
            loads(root)
                    .forEach(load -> ((ObjectNode) load)
                            .put("id", name + load.get("id").asText())
                            .put("name", name));
        });
        project(
                "signs that no font has",
                root -> loads(root)
                        .forEach(load ->
                                ((ObjectNode) load).put("name", "\ud83d\ude00\u0007\u202e\ufffe\u0000 \u05d0\u0627")));
    }

    private void figures() {
        for (String each : new String[] {
            "line_to_neutral_v", "frequency_hz", "rated_a", "continuous_fraction", "neutral_factor", "inrush_limit_a"
        }) {
            extremes("supply's " + each, root -> (ObjectNode) root.get("supply"), each);
        }
        for (String each : new String[] {"rated_a", "neutral_factor", "inrush_limit_a"}) {
            extremes("panel's " + each, HardCases::panel, each);
        }
        for (String each : new String[] {
            "running_a",
            "idle_a",
            "breaker_a",
            "inrush_peak_a",
            "inrush_half_ms",
            "settle_s",
            "power_factor",
            "third_harmonic",
            "crest_factor"
        }) {
            extremes("load's " + each, root -> load(root, 1), each);
        }
        for (String each : new String[] {"timing_tolerance_s", "max_duration_s"}) {
            extremes(each, root -> root, each);
        }
        project("steps as small and delays as great as they get", root -> {
            ObjectNode type = (ObjectNode) root.get("board_types").get(0);
            type.putArray("start_delay_s").add(0).add(3600);
            type.putArray("step_s").add(0.001).add(60);
        });
        project(
                "everything draws nothing",
                root -> loads(root)
                        .forEach(load -> ((ObjectNode) load)
                                .put("running_a", 0)
                                .put("idle_a", 0)
                                .put("inrush_peak_a", 0)));
        project(
                "everything draws the most",
                root -> loads(root)
                        .forEach(load -> ((ObjectNode) load)
                                .put("running_a", 6300)
                                .put("idle_a", 6300)
                                .put("inrush_peak_a", 1_000_000)
                                .put("inrush_half_ms", 600_000)));
        project(
                "no aim",
                root -> root.putObject("objective")
                        .put("peak_inrush", 0)
                        .put("supply_imbalance", 0)
                        .put("panel_imbalance", 0)
                        .put("duration", 0)
                        .put("boards", 0));
        project("one aim beyond all", root -> root.putObject("objective").put("peak_inrush", 1e6));
    }

    private void extremes(String name, java.util.function.Function<ObjectNode, ObjectNode> owner, String key) {
        for (double value : new double[] {1e-300, 1e-9, 1e-6, 0.001, 1, 1e3, 1e5, 1e6}) {
            project(name + " of " + value, root -> owner.apply(root).put(key, value));
        }
    }

    private void plansAndScripts() {
        plan("a load twice", plan -> {
            ArrayNode all = (ArrayNode) plan.get("assignments");
            all.add(all.get(0).deepCopy());
        });
        plan("an empty plan", plan -> {
            ((ArrayNode) plan.get("assignments")).removeAll();
            ((ArrayNode) plan.get("boards")).removeAll();
        });
        plan(
                "loads of another project",
                plan -> plan.get("assignments").forEach(each -> ((ObjectNode) each).put("load", "strange")));
        plan(
                "a panel of another project",
                plan -> plan.get("assignments").forEach(each -> ((ObjectNode) each).put("panel", "strange")));
        plan(
                "slots beyond the panel",
                plan -> plan.get("assignments").forEach(each -> ((ObjectNode) each).put("slot", 1000)));
        plan(
                "outputs beyond the board",
                plan -> plan.get("assignments").forEach(each -> {
                    if (each.hasNonNull("output")) {
                        ((ObjectNode) each).put("output", 1000);
                    }
                }));
        plan(
                "times beyond all",
                plan -> plan.get("assignments").forEach(each -> {
                    if (each.hasNonNull("on_s")) {
                        ((ObjectNode) each).put("on_s", 1e15).put("off_s", 1e15);
                    }
                }));
        plan(
                "settings that no board offers",
                plan -> plan.get("boards")
                        .forEach(each ->
                                ((ObjectNode) each).put("start_delay_s", 3600).put("step_s", 60)));
        plan("all in one slot", plan -> plan.get("assignments").forEach(each -> ((ObjectNode) each).put("slot", 1)));
        for (String at : new String[] {"1e300", "1e9", "1e15", "86400"}) {
            cases.put(
                    "a script until " + at,
                    new Case(
                            PathRun.SMALL,
                            plan -> plan,
                            PathRun.DAY.replace("200", at).replace("201", at)));
        }
        cases.put(
                "everything at once",
                new Case(PathRun.SMALL, plan -> plan, PathRun.DAY.replaceAll("\"at_s\": [0-9]+", "\"at_s\": 0")));
        cases.put(
                "an empty script",
                new Case(
                        PathRun.SMALL,
                        plan -> plan,
                        "{\"format\": \"evenrise-script/1\", \"name\": \"x\", \"events\": []}"));
        StringBuilder many = new StringBuilder("{\"format\": \"evenrise-script/1\", \"name\": \"x\", \"events\": [");
        for (int i = 0; i < 2000; i++) {
            many.append(i == 0 ? "" : ", ")
                    .append("{\"at_s\": ")
                    .append(i * 0.001)
                    .append(", \"what\": \"")
                    .append(i % 2 == 0 ? "emergency" : "release")
                    .append("\"}");
        }
        cases.put("two thousand presses in two seconds", new Case(PathRun.SMALL, plan -> plan, many + "]}"));
    }

    private void project(String name, Consumer<ObjectNode> change) {
        ObjectNode root = (ObjectNode) tree(PathRun.SMALL);
        change.accept(root);
        cases.put(name, new Case(JsonText.of(root), plan -> plan, PathRun.DAY));
    }

    private void plan(String name, Consumer<JsonNode> change) {
        cases.put(
                name,
                new Case(
                        PathRun.SMALL,
                        plan -> {
                            JsonNode root = tree(plan);
                            change.accept(root);
                            return JsonText.of(root);
                        },
                        PathRun.DAY));
    }

    private static JsonNode tree(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ObjectNode panel(ObjectNode root) {
        return (ObjectNode) root.get("panels").get(0);
    }

    private static ArrayNode reserved(ObjectNode root) {
        return panel(root).has("reserved_slots")
                ? (ArrayNode) panel(root).get("reserved_slots")
                : panel(root).putArray("reserved_slots");
    }

    private static ArrayNode loads(ObjectNode root) {
        return (ArrayNode) root.get("loads");
    }

    private static ObjectNode load(ObjectNode root, int index) {
        return (ObjectNode) loads(root).get(index);
    }

    private static void only(ObjectNode root, int index) {
        JsonNode load = loads(root).get(index);
        loads(root).removeAll().add(load);
    }
}
