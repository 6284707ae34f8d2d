package evenrise.model.event;

import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Project;
import evenrise.model.project.Restart;
import evenrise.model.project.Role;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Judges a trace by its steps alone: who closed and opened when. It shares no code with the control and does not read what
 * a rehearsal says it found.
 */
final class Eyewitness {
    private final Project project;
    private final Map<String, Load> loads = new HashMap<>();
    private final Map<String, Double> on = new HashMap<>();
    private final Set<String> drops = new HashSet<>();
    private final Set<String> processing = new HashSet<>();
    private final List<String> said = new ArrayList<>();

    Eyewitness(Layout layout) {
        project = layout.project();
        Set<String> dropping = new HashSet<>();
        project.shutdownGroups().stream()
                .filter(group -> group.onEmergency() == OnEmergency.DROP)
                .forEach(group -> dropping.add(group.id()));
        for (Placement each : layout.placements()) {
            if (each.onSeconds().isPresent()) {
                loads.put(each.id(), each.load());
                on.put(each.id(), each.onSeconds().getAsDouble());
                if (each.load().shutdownGroup().filter(dropping::contains).isPresent()) {
                    drops.add(each.id());
                }
                if (each.load().role() == Role.PROCESSING) {
                    processing.add(each.id());
                }
            }
        }
    }

    /** Everything that must not be, in words. */
    List<String> accuse(Trace trace) {
        Set<String> lit = new HashSet<>();
        Set<String> excused = new HashSet<>();
        boolean emergency = false;
        double began = Double.NaN;
        double origin = Double.NaN;
        double last = Double.NEGATIVE_INFINITY;
        int i = 0;
        while (i < trace.steps().size()) {
            double now = trace.steps().get(i).atSeconds();
            Set<String> came = new HashSet<>();
            for (; i < trace.steps().size() && trace.steps().get(i).atSeconds() == now; i++) {
                TraceEntry step = trace.steps().get(i);
                if (step.kind() == EntryKind.INPUT && step.text().startsWith("emergency ")) {
                    emergency = step.text().equals("emergency begins");
                }
                if (step.kind() == EntryKind.OPENS
                        && emergency
                        && drops.contains(step.load().orElseThrow())) {
                    excused.add(step.load().orElseThrow());
                }
                if (step.kind() == EntryKind.CLOSES) {
                    excused.remove(step.load().orElseThrow());
                }
                if (step.kind() == EntryKind.BEGINS) {
                    began = now;
                    origin = Double.NaN;
                }
                if (step.kind() == EntryKind.OPENS && !lit.remove(step.load().orElseThrow())) {
                    said.add(now + " s: " + step.load() + " opens and was not closed");
                }
                if (step.kind() == EntryKind.CLOSES) {
                    String load = step.load().orElseThrow();
                    came.add(load);
                    if (!lit.add(load)) {
                        said.add(now + " s: " + load + " closes and was closed");
                    }
                    if (Double.isNaN(origin)) {
                        origin = now - on.get(load);
                        boolean isWhole = project.behaviourOrDefault().restart() == Restart.WHOLE;
                        if (isWhole && !(Math.abs(origin - began) < 1e-6) || !(origin > last - 1e-6)) {
                            said.add(now + " s: the sequence that began at " + began + " s counts from " + origin
                                    + " s");
                        }
                        last = origin;
                    }
                    if (!(Math.abs(now - origin - on.get(load)) < 1e-6)) {
                        said.add(now + " s: " + load + " comes on outside the sequence that counts from " + origin
                                + " s, in which it is due after " + on.get(load) + " s");
                    }
                }
            }
            look(now, lit, came, excused, emergency);
        }
        if (!lit.equals(Set.copyOf(trace.onAtEnd()))) {
            said.add("what is on at the end does not follow from the steps");
        }
        return said;
    }

    private List<String> processing(Load load) {
        if (load.needsGroups().isEmpty()) {
            return load.role() == Role.AMPLIFIER ? List.copyOf(processing) : List.of();
        }
        List<String> needed = new ArrayList<>();
        for (String each : processing) {
            String group = loads.get(each).shutdownGroup().orElse("");
            boolean isOwn = group.equals(load.shutdownGroup().orElse(""));
            if (group.isEmpty() || isOwn || load.needsGroups().get().contains(group)) {
                needed.add(each);
            }
        }
        return needed;
    }

    private void look(double now, Set<String> lit, Set<String> came, Set<String> excused, boolean emergency) {
        for (String load : lit) {
            if (emergency && drops.contains(load)) {
                said.add(now + " s: " + load + " is on during an emergency on which it drops");
            }
            Set<String> needed = new HashSet<>(loads.get(load).comesAfter());
            needed.addAll(processing(loads.get(load)));
            for (String each : needed) {
                if (loads.containsKey(each) && !lit.contains(each) && !excused.contains(each)) {
                    said.add(now + " s: " + load + (came.contains(load) ? " comes on without " : " is on without ")
                            + each);
                }
            }
        }
    }
}
