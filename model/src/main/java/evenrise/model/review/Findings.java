package evenrise.model.review;

import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Gathers what the checks say. */
public final class Findings {
    /** Place of a remark that is about many. */
    public static final String PLANT = "plant";

    private static final int NAMED = 3;

    private final List<Remark> remarks = new ArrayList<>();
    private final List<Quantity> quantities = new ArrayList<>();

    public void add(Remark remark) {
        remarks.add(remark);
    }

    public void add(Quantity quantity) {
        quantities.add(quantity);
    }

    /**
     * One remark for all places that a check says nothing of, the first few by name; none where {@code places} is empty.
     *
     * @param needs what is missing, by its field
     */
    public void notChecked(String check, List<String> places, String needs) {
        if (places.isEmpty()) {
            return;
        }
        add(Remark.notChecked(check, places.size() == 1 ? places.get(0) : PLANT, needs + " (" + named(places) + ")"));
    }

    /** The first few by name, the others counted. */
    static String named(List<String> places) {
        String shown =
                places.stream().limit(NAMED).map(place -> "'" + place + "'").collect(Collectors.joining(", "));
        return places.size() > NAMED ? shown + " and " + (places.size() - NAMED) + " more" : shown;
    }

    public List<Remark> remarks() {
        return List.copyOf(remarks);
    }

    public List<Quantity> quantities() {
        return List.copyOf(quantities);
    }
}
