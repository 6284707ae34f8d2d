package evenrise.solver.intake;

import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What is fed A and what is fed B of one room, role and zone sits in different panels. */
final class RedundantFeeds {
    private final Notices notices;

    RedundantFeeds(Notices notices) {
        this.notices = notices;
    }

    void keepApart(List<Bundler.Branch> branches, List<Load> loads) {
        Map<List<Object>, List<Integer>> pairs = new LinkedHashMap<>();
        for (int i = 0; i < branches.size(); i++) {
            Item.Kind kind = branches.get(i).kind();
            if (kind.feed().equals("B")) {
                pairs.computeIfAbsent(partners(kind), any -> new ArrayList<>()).add(i);
            }
        }
        for (int i = 0; i < branches.size(); i++) {
            Item.Kind kind = branches.get(i).kind();
            List<String> others = new ArrayList<>();
            if (kind.feed().equals("A")) {
                for (int k : pairs.getOrDefault(partners(kind), List.of())) {
                    if (canBeApart(branches.get(i), loads.get(i), loads.get(k))) {
                        others.add(loads.get(k).id());
                    }
                }
            }
            if (!others.isEmpty()) {
                loads.set(i, loads.get(i).withApartFrom(others));
            }
        }
    }

    /** No plan keeps apart what the list feeds from one panel. */
    private boolean canBeApart(Bundler.Branch branch, Load a, Load b) {
        boolean isOnePanel = !a.panels().isEmpty() && a.panels().equals(b.panels());
        if (isOnePanel) {
            notices.add(new Notice(
                    Notice.Kind.QUESTION,
                    branch.pieces().get(0).place(),
                    "feeds A and B of '" + branch.pieces().get(0).name() + "' are both from panel '"
                            + a.panels().get(0) + "': which panel is the other's? Until the list says so, they are not"
                            + " kept apart."));
        }
        return !isOnePanel;
    }

    private static List<Object> partners(Item.Kind kind) {
        return List.of(site(kind), kind.role(), kind.zone());
    }

    /** The room without its rack: redundant pieces often stand in racks beside each other. */
    private static String site(Item.Kind kind) {
        return kind.room().replaceAll(", [^,]*$", "");
    }
}
