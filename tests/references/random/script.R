# Random sets for functions that were held to examples, by general libraries of R: stats (prop.test, fisher.test,
# poisson.test), epiR (true prevalence, kappa, chances of finding, freedom, sample sizes) and survey (groups by weight).
# Seed 18. Run by hand: Rscript tests/references/random/script.R
suppressMessages({library(epiR); library(survey); library(numDeriv); library(jsonlite)})
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
set.seed(18)
sets <- function(n, make) lapply(seq_len(n), function(i) make())
level <- function() sample(c(.8, .9, .95, .99), 1)
lame_of <- function(n) rbinom(1, n, sample(c(.01, .05, .3, .8), 1))
wilson <- function(x, n, conf) as.vector(prop.test(x, n, conf.level = conf, correct = FALSE)$conf.int)

# Newcombe's limits from two Wilson intervals of prop.test; Fisher's p.
change <- sets(60, function() {
  n <- sample(c(5, 20, 60, 200, 900), 2, TRUE); x <- c(lame_of(n[1]), lame_of(n[2])); conf <- level()
  p <- x / n; before <- suppressWarnings(wilson(x[1], n[1], conf)); after <- suppressWarnings(wilson(x[2], n[2], conf))
  d <- p[2] - p[1]
  list(c(x[1], n[1], x[2], n[2], conf),
       c(d, d - sqrt((p[2] - after[1])^2 + (before[2] - p[1])^2), d + sqrt((after[2] - p[2])^2 + (p[1] - before[1])^2),
         fisher.test(matrix(c(x[2], n[2] - x[2], x[1], n[1] - x[1]), 2))$p.value))
})

# Known sensitivity and specificity: epiR's epi.prev by Wilson's method, its limits held between 0 and 1.
true <- sets(60, function() {
  n <- sample(c(20, 60, 300, 1000), 1); x <- lame_of(n); se <- runif(1, .6, 1); sp <- runif(1, .8, 1); conf <- level()
  tp <- suppressWarnings(epi.prev(x, n, se, sp, method = "wilson", units = 1, conf.level = conf))$tp
  list(c(x, n, se, sp, conf), pmin(pmax(as.numeric(tp[1, 1:3]), 0), 1))
})

# Two lookers and two to four names: kappa (that of two names held to epiR as well) and AC1 from their definitions on the
# shares; the errors on the table with four sheep more, spread evenly, by the delta method with numDeriv's derivatives.
lookers <- sets(60, function() {
  k <- sample(2:4, 1); n <- sample(c(10, 40, 150), 1); agree <- runif(1, .3, .95); habit <- prop.table(runif(k, .05, 1))
  t <- matrix(rmultinom(1, n, (1 - agree) * outer(habit, habit) + agree * diag(habit)), k)
  if (any(rowSums(t) + colSums(t) == 0)) t <- t + 1
  conf <- level(); z <- qnorm((1 + conf) / 2)
  kappa <- function(p) { p <- matrix(p, k); e <- sum(rowSums(p) * colSums(p)); (sum(diag(p)) - e) / (1 - e) }
  ac1 <- function(p) { p <- matrix(p, k); m <- (rowSums(p) + colSums(p)) / 2; e <- sum(m * (1 - m)) / (k - 1); (sum(diag(p)) - e) / (1 - e) }
  if (k == 2) stopifnot(abs(epi.kappa(t, method = "fleiss")$kappa[1, 1] - kappa(t / sum(t))) < 1e-12)
  limits <- function(f) {
    more <- t + 4 / k^2; q <- as.vector(more / sum(more)); g <- grad(f, q)
    error <- sqrt((sum(q * g^2) - sum(q * g)^2) / sum(more)); own <- f(t / sum(t))
    c(own, max(min(f(q) - z * error, own), -1), min(max(f(q) + z * error, own), 1))
  }
  list(list(table = t, confidence = conf), c(limits(kappa), limits(ac1)))
})

# Groups by weight: svymean over strata with the finite correction.
weighted <- sets(30, function() {
  groups <- sample(2:6, 1); size <- sample(20:200, groups, TRUE); seen <- pmin(size, sample(4:40, groups, TRUE))
  lame <- rbinom(groups, seen, sample(c(.05, .3), 1)); if (sum(lame) == 0) lame[1] <- 1
  sheep <- data.frame(group = rep(seq_len(groups), seen), size = rep(size, seen), weight = rep(size / seen, seen),
                      lame = unlist(lapply(seq_len(groups), function(g) rep(c(1, 0), c(lame[g], seen[g] - lame[g])))))
  mean <- svymean(~lame, svydesign(ids = ~1, strata = ~group, fpc = ~size, weights = ~weight, data = sheep))
  list(list(size = size, lame = lame, seen = seen), c(coef(mean)[[1]], SE(mean)[[1]]))
})

# The usual approximation of the chance of finding, and freedom from it.
found <- sets(60, function() {
  N <- sample(c(40, 120, 400, 2000), 1); n <- sample(1:(N / 2), 1); p <- sample(c(.01, .02, .05, .1), 1); se <- runif(1, .5, 1)
  prior <- runif(1); d <- ceiling(round(N * p, 9))
  # epiR rounds the number of lame sheep up from the share; a touch less than d keeps it at d.
  chance <- rsu.sep.rs(N = N, n = n, pstar = (d - 1e-6) / N, se.u = se)
  list(c(N, n, p, se, prior), c(chance, rsu.pfree.rs(se.p = chance, p.intro = 0, prior = prior)$PFree[1]))
})

estimate <- sets(60, function() {
  p <- sample(c(.02, .05, .1, .3), 1); d <- p * sample(c(.2, .5, .8), 1); N <- sample(c(NA, 100, 450, 2000), 1); conf <- sample(c(.9, .95, .99), 1)
  list(c(p, d, N, conf), epi.sssimpleestb(N = N, Py = p, epsilon = d, error = "absolute", se = 1, sp = 1, nfractional = TRUE, conf.level = conf))
})

# Rates and their ratio: poisson.test.
rate <- sets(60, function() {
  x <- rpois(1, sample(c(1, 6, 40), 1)); days <- sample(200:90000, 1); conf <- level()
  list(c(x, days, conf), c(x / days, poisson.test(x, days, conf.level = conf)$conf.int))
})
ratio <- sets(60, function() {
  x <- rpois(2, sample(c(2, 10, 40), 1)); x[1] <- max(x[1], 1)
  days <- sample(200:90000, 2); conf <- level()
  test <- poisson.test(rev(x), rev(days), conf.level = conf)
  list(c(x[1], days[1], x[2], days[2], conf), c(test$estimate[[1]], test$conf.int, test$p.value))
})

write(toJSON(list(change = change, true = true, lookers = lookers, weighted = weighted, found = found, estimate = estimate,
                  rate = rate, ratio = ratio), digits = I(17), auto_unbox = TRUE, na = "null"), file.path(here, "values.json"))
