package evenrise.solver.sample;

/** What is known of a drawn venue before its panels are. */
record VenueFrame(VenuePlant plant, VenueSize size, VenueZones zones, VenueTree tree, Halls halls, BoardKinds kinds) {
    /** @throws IllegalArgumentException where the venue has no room for a part of the plant */
    static VenueFrame of(VenuePlant plant, VenueSize size) {
        plant.fit(size);
        VenueZones zones = new VenueZones(plant.has(PlantOption.SYSTEMS));
        return new VenueFrame(
                plant,
                size,
                zones,
                new VenueTree(plant, zones, size),
                new Halls(plant, zones, size.panels()),
                new BoardKinds(plant));
    }
}
