package rosinbook.web;

import java.net.URI;
import java.util.Locale;
import java.util.Optional;

/**
 * Where the service listens, and under which address people reach it.
 *
 * @param address to listen on
 * @param port 0 for any free one
 * @param publicAddress such as {@code https://band.example}; empty if it is reached on this computer only
 * @param isBehindProxy whether every request comes through a web server of ours that tells from where it has it
 */
public record Listening(String address, int port, Optional<URI> publicAddress, boolean isBehindProxy) {
    private static final String LOOPBACK = "127.0.0.1";

    /** Reached directly. */
    public Listening(String address, int port, Optional<URI> publicAddress) {
        this(address, port, publicAddress, false);
    }

    /** @throws IllegalArgumentException naming what is wrong */
    public Listening {
        if (port < 0 || port > 65_535) {
            throw new IllegalArgumentException("port is " + port + "; give 0 to 65535");
        }
        publicAddress = publicAddress.map(Listening::origin);
        if (!isLoopback(address) && publicAddress.isEmpty()) {
            throw new IllegalArgumentException("to listen on " + address
                    + ", say with --public-address how people reach it, such as https://band.example");
        }
    }

    /**
     * The address as browsers name it in {@code Origin}: without the port that everybody expects.
     *
     * @see "RFC 6454, section 6.2"
     */
    private static URI origin(URI given) {
        boolean isHttps = "https".equals(given.getScheme());
        boolean isWeb = isHttps || "http".equals(given.getScheme());
        if (!isWeb || given.getHost() == null) {
            throw new IllegalArgumentException(
                    "the public address must look like https://band.example, as people type it");
        }
        boolean isMore = given.getUserInfo() != null
                || !given.getPath().matches("/?")
                || given.getQuery() != null
                || given.getFragment() != null;
        if (isMore) {
            throw new IllegalArgumentException("the public address says more than https://band.example or"
                    + " http://band.example:8017 would; leave out user, path and whatever follows");
        }
        boolean isUsualPort = given.getPort() < 0 || given.getPort() == (isHttps ? 443 : 80);
        return URI.create(given.getScheme() + "://" + given.getHost() + (isUsualPort ? "" : ":" + given.getPort()));
    }

    /** This computer alone. */
    public static Listening here(int port) {
        return new Listening(LOOPBACK, port, Optional.empty());
    }

    private static boolean isLoopback(String address) {
        return address.equals(LOOPBACK) || address.equals("::1") || address.equals("localhost");
    }

    /** Whether somebody from elsewhere can reach it. */
    boolean needsSignIn() {
        return publicAddress.isPresent();
    }

    boolean isSecure() {
        return publicAddress.filter(uri -> "https".equals(uri.getScheme())).isPresent();
    }

    /**
     * Whether browsers may be told to come encrypted and no other way. Not where the public address has a port of its own:
     * they would take it for every port of that name, and others may serve those.
     *
     * @see "RFC 6797, section 8.3"
     */
    boolean isAlwaysSecure() {
        return isSecure() && publicAddress.orElseThrow().getPort() < 0;
    }

    /**
     * Whether something stands in front of it that we were not told of: it does not encrypt by itself. Then all who come
     * through that count as one at the sign-in.
     */
    public boolean hidesClients() {
        return isSecure() && !isBehindProxy;
    }

    /** Whether a Host header's name is one of ours. */
    boolean isOurs(String name) {
        String lower = name.toLowerCase(Locale.ROOT);
        return publicAddress.isEmpty()
                ? isLoopback(lower) || lower.equals("[::1]")
                : publicAddress.get().getHost().equalsIgnoreCase(lower);
    }

    /**
     * Where somebody at this computer opens it.
     *
     * @param boundPort the port it listens on
     */
    String opensAt(int boundPort) {
        String host = address.contains(":") ? "[" + address + "]" : address;
        return linkBase(host + ":" + boundPort) + "/";
    }

    /** Scheme and authority of links that are handed out. */
    String linkBase(String hostHeader) {
        return publicAddress
                .map(uri -> uri.getScheme() + "://" + uri.getAuthority())
                .orElse("http://" + hostHeader);
    }
}
