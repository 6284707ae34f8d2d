package evenrise.model.review;

import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import java.util.ArrayList;
import java.util.List;

/** Gathers what the checks say. */
public final class Findings {
    private final List<Remark> remarks = new ArrayList<>();
    private final List<Quantity> quantities = new ArrayList<>();

    public void add(Remark remark) {
        remarks.add(remark);
    }

    public void add(Quantity quantity) {
        quantities.add(quantity);
    }

    public List<Remark> remarks() {
        return List.copyOf(remarks);
    }

    public List<Quantity> quantities() {
        return List.copyOf(quantities);
    }
}
